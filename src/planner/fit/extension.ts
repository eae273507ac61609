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
import type { Problem } from '../problem/problem.js';
import { solve, type SoloAnswer } from './solo.js';

const DAY_MINUTES = 1440;

/** What a later end of a window does for work that does not fit it. */
export type LaterEnd =
  | {
      /** Minutes by which the end must move. */
      readonly minutes: number;
      /** No fewer minutes would do. */
      readonly proven: boolean;
    }
  | {
      readonly minutes: undefined;
      /** No end up to so many minutes later would do; without, none was found. */
      readonly proven: boolean;
      readonly upTo: number;
    };

/**
 * The fewest whole minutes by which the window's end must move later for the activities to fit; each amount that is
 * told was tried by placing them. Everything but the `without` holds.
 */
export function shortestExtension(
  plan: Plan,
  window: AccessWindow,
  activities: readonly Activity[],
  book: LedgerBook,
  without: ReadonlySet<Relaxation>,
): LaterEnd {
  const longest = reach(activities);
  const at = (longerBy: number, by = book): Problem =>
    problemOf(plan, { windows: [window], activities, longerBy, without }, by);
  const asked = new Map<number, SoloAnswer>();
  const ask = (longerBy: number): SoloAnswer => {
    let answer = asked.get(longerBy);
    if (!answer) asked.set(longerBy, (answer = solve(at(longerBy))));
    return answer;
  };
  // Without changeovers more is never worse, and no length has more time than the longest without them.
  const ends = fullShifts(plan, window, longest);
  const ample = at(longest, ends.length > 0 ? book.withoutShifts() : book);
  const most = solve(ample);
  if (ends.length === 0) asked.set(longest, most);
  if (!most.done) return { minutes: undefined, proven: most.proven, upTo: longest };
  const { bound, guess } = rangeOf({ window, ample, book, longest, now: at(0) }, most);
  let tried = -1;
  let proven = true;
  // With them that holds within a stretch of lengths; past the end of a full shift a changeover takes time away.
  for (const end of [...ends, longest]) {
    if (end < bound) {
      tried = end;
      continue;
    }
    const low = Math.max(tried + 1, bound);
    const does = (longerBy: number): boolean => ask(longerBy).done;
    // Nearly always it is the bound or the guess; what is far too long takes longest to place.
    const high = [low, Math.max(low, Math.min(guess, end)), end].find(does);
    if (high !== undefined) {
      const minutes = fewestIn(low, high, does);
      const isLeast = minutes <= bound || ask(minutes - 1).proven;
      return { minutes, proven: proven && isLeast };
    }
    proven &&= ask(end).proven;
    tried = end;
  }
  return { minutes: undefined, proven, upTo: longest };
}

/** Minutes by which a window ends with a full shift when it is so much longer: more of it has a changeover more. */
function fullShifts({ rules }: Plan, window: AccessWindow, longest: number): number[] {
  const { shifts } = rules;
  if (!shifts || shifts.changeoverMinutes === 0) return [];
  const minutes = (window.end - window.start) / MINUTE;
  const found: number[] = [];
  for (let full = Math.ceil(minutes / shifts.longestMinutes); ; full += 1) {
    const longerBy = Math.floor(full * shifts.longestMinutes - minutes);
    if (longerBy >= longest) return found;
    found.push(longerBy);
  }
}

/** The fewest from `low` to `high` that do, where `high` does and more is never worse. */
function fewestIn(low: number, high: number, does: (minutes: number) => boolean): number {
  if (low === high || !does(high - 1)) return high;
  let [fails, fits] = [low - 1, high - 1];
  for (let step = 30; fits - fails > 1; step *= 2) {
    const middle = Math.min(Math.floor((fits + fails) / 2), fails + step);
    if (does(middle)) fits = middle;
    else fails = middle;
  }
  return fits;
}

interface Longest {
  readonly window: AccessWindow;
  readonly book: LedgerBook;
  /** Minutes by which the longest window looked at is longer, and its problem. */
  readonly longest: number;
  readonly ample: Problem;
  /** The problem of the window as it is. */
  readonly now: Problem;
}

/** Fewer minutes than `bound` never do, and `guess` is what the answer of the longest window needs. */
function rangeOf(
  { window, book, longest, ample, now }: Longest,
  answer: SoloAnswer,
): { readonly bound: number; readonly guess: number } {
  // Where usable time would end today, were there enough of it, for each task whose time ends with the window: the
  // ledger of the longer window less what it is longer by.
  const ends = ample.tasks.map(({ outside, activity }) =>
    outside || hasOwnTimes(window, activity)
      ? Number.POSITIVE_INFINITY
      : (clearBy(window, activity, book, longest) - ample.base) / MINUTE - longest,
  );
  const heads = headsOf(new Board(ample));
  let bound = 0;
  for (const task of ample.tasks)
    bound = Math.max(bound, Math.ceil(heads.ends[task.index]! - ends[task.index]!));
  // Starts as a longer window allows them: what finds no place today has none.
  bound = Math.min(longest, Math.max(bound, overdrawnMinutes(now, heads.starts)));
  let guess = bound;
  for (const visit of answer.visits)
    guess = Math.max(guess, Math.ceil(visit.end - ends[visit.task]!));
  return { bound, guess };
}

/** Whether some section that the work needs is dead in times of its own, which no later end makes longer. */
function hasOwnTimes(window: AccessWindow, { isolation }: Activity): boolean {
  return window.isolation.some(({ section, during }) => during && isolation.includes(section));
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
