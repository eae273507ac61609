import { addMinutes, durationText } from '../../calendar/index.js';
import { needsOf, type AccessWindow } from '../../model/index.js';
import type { Ledger } from '../../rules/types.js';
import { asOpen, bookedOf } from '../problem/compile.js';
import { namesText } from '../names-text.js';
import { momentText } from '../problem/eligibility.js';
import type { LaterEnd } from './extension.js';
import { scheduleAlone } from './schedule-alone.js';
import type { TimeCase } from './time-causes.js';
import type { SharedReason } from './types.js';

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
  then: string,
): SharedReason {
  const { minutes: shortBy, proven } = extension;
  const leave = alone && item.plain ? unitsToLeave(item) : [];
  return {
    code: 'too-short',
    words: (window) => {
      const cures = [`the end moves to ${laterEnd(window, shortBy)}`, ...leave].join(', or if ');
      return `short by ${proven ? '' : 'at most '}${durationText(shortBy)}; ${then} ${cures}${barredText(item, window)}`;
    },
    shortByMinutes: shortBy,
    ...(!proven && { atMost: true }),
  };
}

/** The end moved by so many minutes, with its day only where that changes. */
function laterEnd(window: AccessWindow, minutes: number): string {
  const end = momentText(addMinutes(window.end, minutes), window.zone);
  return end.slice(0, 10) === momentText(window.end, window.zone).slice(0, 10)
    ? end.slice(11)
    : end;
}

/** For each repeated activity, how few of its units have to be left out for the rest to fit as booked. */
function unitsToLeave(item: TimeCase): string[] {
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
    return [
      `${high} of ${task.units} units ${high === 1 ? 'is' : 'are'} left out (${task.activity.id})`,
    ];
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

/** `; "Loud work by the houses" bars A1, A2 for 5 h of N01`, for each curfew and break; empty where none bars any. */
function barredText({ trials, problem }: TimeCase, window: AccessWindow): string {
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
  return [...barred]
    .map(
      ([rule, { minutes, by }]) =>
        `; "${rule}" bars ${namesText(by)} for ${by.length > 1 ? 'up to ' : ''}${durationText(minutes)} of ${window.id}`,
    )
    .join('');
}
