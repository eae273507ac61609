import { addMinutes, localTimeOf } from '../../calendar/index.js';
import { needsOf, type AccessWindow } from '../../model/index.js';
import type { Ledger } from '../../rules/types.js';
import { asOpen, bookedOf } from '../problem/compile.js';
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
 */
export function tooShort(
  item: TimeCase,
  extension: Found,
  alone: boolean,
  once: 'nothing' | 'others' | 'dates-and-resources',
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
        once,
        end,
        otherDay: isOtherDay(window, end.at),
        leave,
        bars,
        window: window.id,
      });
    },
    shortByMinutes: shortBy,
    ...(!proven && { atMost: true }),
  };
}

function isOtherDay({ end, zone }: AccessWindow, later: number): boolean {
  const [was, is] = [localTimeOf(end, zone), localTimeOf(later, zone)];
  return was.day !== is.day || was.month !== is.month || was.year !== is.year;
}

/** For each repeated activity, how few of its units have to be left out for the rest to fit as booked. */
function unitsToLeave(item: TimeCase): TooShort['leave'] {
  return item.problem.tasks.flatMap((task) => {
    if (task.units < 2) return [];
    const fits = (out: number): boolean => {
      const tasks = item.problem.tasks.map((each) =>
        each === task ? { ...each, units: each.units - out } : each,
      );
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

const stops = new WeakMap<Ledger, ReadonlyMap<string, number>>();

/** Minutes that each curfew and break takes, by its rule. */
function stopsIn(ledger: Ledger): ReadonlyMap<string, number> {
  const known = stops.get(ledger);
  if (known) return known;
  const own = new Map<string, number>();
  for (const { kind, rule, minutes } of ledger.rows)
    if (kind === 'curfew' || kind === 'shift-break') own.set(rule, (own.get(rule) ?? 0) + minutes);
  stops.set(ledger, own);
  return own;
}

/** The curfews and breaks that take hours of the window, each with the work that it bars; empty where none bars any. */
function barsOf({ trials, problem, window }: TimeCase): TooShort['bars'] {
  const open = asOpen(window);
  const barred = new Map<string, { minutes: number; readonly by: string[] }>();
  for (const { activity, outside } of problem.tasks) {
    if (outside) continue;
    const needs = { ...needsOf(activity), isolation: bookedOf(window, activity) };
    for (const [rule, minutes] of stopsIn(trials.book.of(open, needs))) {
      const known = barred.get(rule) ?? { minutes: 0, by: [] };
      known.minutes = Math.max(known.minutes, minutes);
      known.by.push(activity.id);
      barred.set(rule, known);
    }
  }
  return [...barred].map(([rule, { minutes, by }]) => ({ rule, activities: by, minutes }));
}
