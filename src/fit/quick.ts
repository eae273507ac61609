import type { AccessWindow, Activity, Plan } from '../model/index.js';
import { problemOf } from './compile.js';
import { neverCode } from './eligibility.js';
import { spareOf } from './fit.js';
import type { LedgerBook } from './ledger-book.js';
import type { Skeleton } from './skeleton.js';
import { solve } from './solo.js';

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
  book: LedgerBook,
): Int32Array {
  const states = new Int32Array(windows.length);
  const skeleton = book.skeleton(all);
  if (skeleton.activities.length === 0) return states.fill(stateOf('nothing-left'));
  windows.forEach((window, at) => {
    states[at] = stateIn(plan, skeleton, all, window, book);
  });
  return states;
}

function stateIn(
  plan: Plan,
  { groups }: Skeleton,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerBook,
): QuickState {
  if (window.status === 'withdrawn') return stateOf('withdrawn');
  for (const { activity } of groups) {
    if (activity.place === 'outside') continue;
    const never = neverCode(window, activity);
    if (never) return stateOf(never);
  }
  const problem = problemOf(plan, { windows: [window], activities: all, without: place }, book);
  const answer = solve(problem);
  return answer.done ? spareOf(problem, answer.visits, window, book) : NO;
}

const place = new Set(['place'] as const);
