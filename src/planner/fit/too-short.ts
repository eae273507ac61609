import { addMinutes, dayAt } from '../../calendar/index.js';
import type { Ledger } from '../../rules/types.js';
import { chainOf } from '../problem/chain.js';
import { asOpen } from '../problem/compile.js';
import { roomIn } from '../problem/outlasts.js';
import { sayReason, type reasonSentences } from '../reason-sentences.js';
import type { LaterEnd } from './extension.js';
import { scheduleAlone } from './schedule-alone.js';
import type { TimeCase } from './time-causes.js';
import type { SharedReason } from './types.js';

type TooShort = Parameters<(typeof reasonSentences)['too-short']>[0];
type Found = Extract<LaterEnd, { readonly minutes: number }>;

/**
 * That the window is too short, what a later end would do, and the hours that curfews and breaks take from it.
 *
 * @param alone A later end alone is enough, and nothing else stands in the way but time.
 * @param others The rest of the reasons have to be cured beside it.
 */
export function tooShort(
  item: TimeCase,
  extension: Found,
  alone: boolean,
  others: boolean,
): SharedReason {
  const { minutes: shortBy, proven } = extension;
  const leave = alone && item.plain ? unitsToLeave(item) : [];
  const bars = barsOf(item);
  return {
    code: 'too-short',
    words: (window) => {
      const end = { at: addMinutes(window.end, shortBy), zone: window.zone };
      return sayReason('too-short', {
        minutes: shortBy,
        proven,
        others,
        end,
        otherDay: dayAt(window.end, window.zone) !== dayAt(end.at, window.zone),
        leave,
        bars,
        window: window.id,
      });
    },
    shortByMinutes: shortBy,
    ...(!proven && { atMost: true }),
  };
}

/** For each repeated activity, how few of its units have to be left out for the rest to fit as booked. */
function unitsToLeave(item: TimeCase): TooShort['leave'] {
  const { trials, window } = item;
  const { skeleton, book } = trials;
  const room = roomIn(skeleton, window, 0, book);
  return item.problem.tasks.flatMap((task) => {
    if (task.units < 2) return [];
    const fits = (out: number): boolean => {
      const units = task.units - out;
      const work = skeleton.work.with(task.index, { ...skeleton.work[task.index]!, units });
      if (chainOf({ ...skeleton, work }) > room) return false;
      const tasks = item.problem.tasks.with(task.index, { ...task, units });
      return scheduleAlone({ ...item.problem, tasks }).done;
    };
    let high = task.units - 1;
    if (!fits(high)) return [];
    let low = 1;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (fits(middle)) high = middle;
      else low = middle + 1;
    }
    return [{ activity: task.activity.id, out: high, of: task.units }];
  });
}

const known = new WeakMap<Ledger, ReadonlyMap<string, number>>();

/** Minutes that each curfew and break takes, by its rule. */
function stopsIn(ledger: Ledger): ReadonlyMap<string, number> {
  const kept = known.get(ledger);
  if (kept) return kept;
  const own = new Map<string, number>();
  for (const { kind, rule, minutes } of ledger.rows)
    if (kind === 'curfew' || kind === 'shift-break') own.set(rule, (own.get(rule) ?? 0) + minutes);
  known.set(ledger, own);
  return own;
}

/** The curfews and breaks that take hours of the window, each with the work that it bars; empty where none bars any. */
function barsOf({ trials, problem, window }: TimeCase): TooShort['bars'] {
  const { groups, groupOf } = trials.skeleton;
  const stops = groups.map(({ needs }) => stopsIn(trials.book.of(asOpen(window, needs), needs)));
  const barred = new Map<string, { minutes: number; readonly by: string[] }>();
  for (const { activity, outside, index } of problem.tasks) {
    if (outside) continue;
    for (const [rule, minutes] of stops[groupOf[index]!]!) {
      const known = barred.get(rule) ?? { minutes: 0, by: [] };
      known.minutes = Math.max(known.minutes, minutes);
      known.by.push(activity.id);
      barred.set(rule, known);
    }
  }
  return [...barred].map(([rule, { minutes, by }]) => ({ rule, activities: by, minutes }));
}
