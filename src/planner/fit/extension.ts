import { lengthMinutes, MINUTE } from '../../calendar/index.js';
import {
  minutesInOneVisit,
  needsOf,
  type AccessWindow,
  type Activity,
  type Plan,
} from '../../model/index.js';
import { Board } from '../problem/board.js';
import { asOpen, bookedOf, problemOf, type Relaxation } from '../problem/compile.js';
import { headsOf } from '../problem/heads.js';
import type { LedgerBook } from '../problem/ledger-book.js';
import { overdrawnMinutes } from '../problem/overdrawn.js';
import { solve } from './solo.js';

const DAY_MINUTES = 1440;

export interface Extension {
  readonly minutes: number;
  /** Proven: no fewer minutes would do. */
  readonly proven: boolean;
}

/**
 * The fewest whole minutes by which the window's end must move later for the activities to fit, `undefined` when no
 * later end within reason helps. Everything but the `without` holds.
 */
export function shortestExtension(
  plan: Plan,
  window: AccessWindow,
  activities: readonly Activity[],
  book: LedgerBook,
  without: ReadonlySet<Relaxation>,
): Extension | undefined {
  const longest = reach(activities);
  const at = (longerBy: number) =>
    problemOf(plan, { windows: [window], activities, longerBy, without }, book);
  const ample = at(longest);
  const answer = solve(ample);
  if (!answer.done) return undefined;

  // Where usable time would end today, were there enough of it, for each task: the ledger of the longer window less
  // what it is longer by.
  // Sections with times of their own are not dead longer for it, so nothing is known so quickly of what needs them.
  const timed = new Set(window.isolation.filter((one) => one.during).map((one) => one.section));
  const ends = ample.tasks.map((task) =>
    task.outside || task.activity.isolation.some((section) => timed.has(section))
      ? Number.POSITIVE_INFINITY
      : (clearBy(window, task.activity, book, longest) - ample.base) / MINUTE - longest,
  );
  const heads = headsOf(new Board(ample));
  let low = 0;
  for (const task of ample.tasks)
    low = Math.max(low, Math.ceil(heads.ends[task.index]! - ends[task.index]!));
  // Starts as a longer window allows them: what finds no place today has none.
  low = Math.max(low, overdrawnMinutes(at(0), heads.starts));
  let high = low;
  for (const visit of answer.visits)
    high = Math.max(high, Math.ceil(visit.end - ends[visit.task]!));

  const exactEnds = !plan.rules.shifts && timed.size === 0;
  if (low === high && exactEnds) return { minutes: high, proven: true };
  const bound = low;
  const open = new Set<number>();
  const fits = (longerBy: number): boolean => {
    const { done, proven } = solve(at(longerBy));
    if (!proven) open.add(longerBy);
    return done;
  };
  const found = (minutes: number): Extension => ({
    minutes,
    proven: minutes === bound || !open.has(minutes - 1),
  });
  // Nearly always the answer is the bound, or the schedule found above cannot be had a minute sooner.
  if (fits(low)) return found(low);
  low += 1;
  high = Math.max(high, low);
  while (!fits(high)) {
    if (high >= longest) return undefined;
    low = high + 1;
    high = Math.min(longest, Math.max(high + 30, high * 2));
  }
  // `high` fits; all below `low` do not. Mostly `high` is the answer already.
  if (low < high && !fits(high - 1)) return found(high);
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (fits(middle)) high = middle;
    else low = middle + 1;
  }
  return found(high);
}

/** As far as a longer window is looked at: the work end to end and two days, in whole days, a fortnight at most. */
export function reach(activities: readonly Activity[]): number {
  let minutes = 0;
  for (const activity of activities) {
    minutes += minutesInOneVisit(activity.work);
    for (const link of activity.after) minutes += link.gapMinutes;
  }
  return Math.min(14, Math.ceil(minutes / DAY_MINUTES) + 2) * DAY_MINUTES;
}

/** When work with the activity's needs must be clear in a window thought longer: the start of its last deductions. */
function clearBy(
  window: AccessWindow,
  activity: Activity,
  book: LedgerBook,
  longerBy: number,
): number {
  const open = asOpen(window);
  const needs = { ...needsOf(activity), isolation: bookedOf(window, activity) };
  let end = window.end + longerBy * MINUTE;
  for (const row of book.of(open, needs, longerBy).rows.toReversed()) {
    if (row.kind !== 'lead-out' && row.kind !== 'margin') break;
    end -= lengthMinutes(row) * MINUTE;
  }
  return end;
}
