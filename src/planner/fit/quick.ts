import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import { problemOf } from '../problem/compile.js';
import { neverCode } from '../problem/eligibility.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import { outlasts } from '../problem/outlasts.js';
import { minutesDown, minutesUp, type Skeleton } from '../problem/skeleton.js';
import { scheduleAlone } from './schedule-alone.js';
import { spareOf } from './spare.js';

/**
 * What is known of a package in a window before any reason is worked out, as one whole number: from 0 up it fits with
 * so many minutes to spare; `NO` says that it does not fit, and that by how much is still to be worked out; below that
 * it does not fit however long the window, for the reason `plainCode` names.
 */
export type QuickState = number;

export const NO: QuickState = -1;

/** Reasons that no amount of time cures and that take no search to find. */
const plainCodes = [
  'withdrawn',
  'fixed-elsewhere',
  'lines-not-blocked',
  'outside-extent',
  'isolation-not-booked',
  'nothing-left',
  'rows-left-out',
] as const;
export type PlainCode = (typeof plainCodes)[number];

/** The first reason of a state below `NO`; `undefined` of any other. */
export function plainCode(state: QuickState): PlainCode | undefined {
  return state < NO ? plainCodes[NO - 1 - state] : undefined;
}

export function stateOf(code: PlainCode): QuickState {
  return NO - 1 - plainCodes.indexOf(code);
}

/**
 * The state of what is left of some activities in each of some windows. Says the same as `verdictOf`, without reasons:
 * the windows that can never take them take no time, and the schedule that fits is the one that a verdict shows.
 */
export function quickStates(
  plan: Plan,
  all: readonly Activity[],
  windows: readonly AccessWindow[],
  book: LedgerCache,
): Int32Array {
  const states = new Int32Array(windows.length);
  const skeleton = book.skeleton(all);
  if (skeleton.activities.length === 0) return states.fill(stateOf('nothing-left'));
  const known = isMovable(skeleton) ? book.statesBy(skeleton) : undefined;
  windows.forEach((window, at) => {
    const never = neverIn(window, skeleton);
    if (never) {
      states[at] = stateOf(never);
      return;
    }
    const shape = known && shapeOf(window, skeleton, book);
    let state = shape === undefined ? undefined : known!.get(shape);
    if (state === undefined) {
      state = stateIn(plan, all, window, book);
      if (shape !== undefined) known!.set(shape, state);
    }
    states[at] = state;
  });
  return states;
}

function neverIn(window: AccessWindow, { groups }: Skeleton): PlainCode | undefined {
  if (window.status === 'withdrawn') return 'withdrawn';
  for (const { activity } of groups) {
    if (activity.place === 'outside') continue;
    const never = neverCode(window, activity);
    if (never) return never;
  }
  return undefined;
}

function stateIn(
  plan: Plan,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerCache,
): QuickState {
  if (outlasts(book.skeleton(all), window, 0, book)) return NO;
  const problem = problemOf(plan, { windows: [window], activities: all, without: place }, book);
  const answer = scheduleAlone(problem);
  return answer.done ? spareOf(problem, answer.visits, window, book).minutes : NO;
}

/** Whether the work is the same problem in every window that is alike: nothing of it hangs on the time outside. */
function isMovable({ cures, hasOutside }: Skeleton): boolean {
  return cures === 0 && !hasOutside;
}

/**
 * Everything that movable work sees of a window: usable time, what there is of its resources, when it may begin and by
 * when it must be over, in minutes after the window starts. Windows of one shape give one answer: most of a plan's nights
 * are alike. Dates before or after the window put tasks in the same order wherever the window is, and do no more.
 */
function shapeOf(
  window: AccessWindow,
  { activities, groups, lastNotBefore, named }: Skeleton,
  book: LedgerCache,
): string {
  const base = Math.floor(window.start / MINUTE);
  const end = minutesUp(window.end, base * MINUTE);
  let shape = '';
  for (const { needs } of groups) shape += `${book.usable.of(window, needs, 0).shape};`;
  if (lastNotBefore > window.start)
    for (const { notBefore = 0 } of activities)
      shape += `${Math.min(Math.max(0, minutesUp(notBefore, base * MINUTE)), end + 1)};`;
  for (const { keyDate } of activities)
    if (keyDate !== undefined)
      shape += `${Math.min(Math.max(-1, minutesDown(keyDate, base * MINUTE)), end)};`;
  if (named.size > 0)
    for (const resource of book.supplies.resources) {
      if (!named.has(resource.id)) continue;
      const { at, free } = book.supplies.part(resource, base, 0, end);
      shape += at.length === 1 ? `${free[0]};` : `${at.join()} ${free.join()};`;
    }
  return shape;
}

const place = new Set(['place'] as const);
