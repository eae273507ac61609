import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Activity } from '../../model/index.js';
import type { Relaxation } from '../problem/compile.js';
import { overdrawnMinutes } from '../problem/overdrawn.js';
import { scheduleAlone } from './schedule-alone.js';
import type { Trial, Trials } from './trials.js';

const DAY_MINUTES = 1440;

/**
 * What a later end of a window does for work that does not fit it. `beyond`: minutes after the end as it is, past which
 * curfews make no difference to the answer.
 */
export type LaterEnd =
  | {
      /** Minutes by which the end must move. */
      readonly minutes: number;
      /** No fewer minutes would do. */
      readonly proven: boolean;
      readonly beyond: number;
    }
  | {
      readonly minutes: undefined;
      /** No end up to so many minutes later would do; without, none was found. */
      readonly proven: boolean;
      readonly upTo: number;
      readonly beyond: number;
    };

/**
 * The fewest whole minutes by which the window's end must move later for the activities to fit, which as it is they do
 * not; each amount that is told was tried by placing them. Everything but the `without` holds.
 */
export function shortestExtension(
  trials: Trials,
  window: AccessWindow,
  without: readonly Relaxation[],
): LaterEnd {
  const upTo = trials.reach;
  const minutes = (window.end - window.start) / MINUTE;
  // With time without a stop it fits the sooner; what then finds no place never does.
  const far = Math.floor(Math.ceil((minutes + upTo) / DAY_MINUTES) * DAY_MINUTES - minutes);
  const open: Trial = { window, longerBy: far, without, open: true };
  const most = trials.solve(open);
  if (!most.done)
    return { minutes: undefined, proven: most.proven, upTo, beyond: most.proven ? 0 : upTo };
  const bound = needed(clearTimes(trials, window), most.heads.ends);
  let proven = true;
  for (const stretch of stretchesOf(trials, window, far)) {
    if (stretch.until < bound || stretch.until <= 0) continue;
    if (stretch.after >= upTo) break;
    const name = `${stretch.after + minutes} ${stretch.until + minutes} `;
    // Kept by minutes from the start: a window of another length meets the same stretch.
    const { least, proven: isLeast } = trials.once(
      name,
      { window, longerBy: stretch.until, without },
      () => leastIn(trials, window, without, stretch),
    );
    proven &&= isLeast;
    if (least === undefined) continue;
    const later = least - minutes;
    if (later > upTo) break;
    return { minutes: Math.max(1, later), proven, beyond: proven ? later : upTo };
  }
  return { minutes: undefined, proven, upTo, beyond: upTo };
}

/** Later ends after one and up to another, in minutes, of which a later one never has less time. */
interface Stretch {
  readonly after: number;
  readonly until: number;
}

/** Past the end of a full shift a changeover takes time away; until the end of the next, more time is never worse. */
function stretchesOf({ plan }: Trials, window: AccessWindow, far: number): Stretch[] {
  const { shifts } = plan.rules;
  const minutes = (window.end - window.start) / MINUTE;
  if (!shifts || shifts.changeoverMinutes === 0) return [{ after: -minutes, until: far }];
  const { longestMinutes } = shifts;
  const found: Stretch[] = [];
  for (let full = Math.ceil(minutes / longestMinutes); ; full += 1) {
    const after = Math.floor((full - 1) * longestMinutes - minutes);
    if (after >= far) return found;
    found.push({ after, until: Math.floor(full * longestMinutes - minutes) });
  }
}

/** The least length in minutes, of those in a stretch, in which the work fits; without one where it fits in none. */
interface Least {
  readonly least?: number;
  /** In no shorter one of the stretch does it fit; without one, in none. */
  readonly proven: boolean;
}

function leastIn(
  trials: Trials,
  window: AccessWindow,
  without: readonly Relaxation[],
  { after, until }: Stretch,
): Least {
  const trial = (longerBy: number): Trial => ({ window, longerBy, without });
  const most = scheduleAlone(trials.problem(trial(until)));
  if (!most.done) return { proven: most.proven };
  const clear = clearTimes(trials, window);
  const { heads } = most;
  const bound = needed(clear, heads.ends);
  let low = Math.max(after + 1, 1, bound);
  let isLeast = low === bound || low > 1 || trials.solve(trial(0)).proven;
  const lastEnds = (visits: typeof most.visits): number[] => {
    const ends = clear.map(() => Number.NEGATIVE_INFINITY);
    // What takes no time needs a minute to be in.
    for (const { task, start, end } of visits) ends[task] = Math.max(ends[task]!, end, start + 1);
    return ends;
  };
  // Where nothing hangs on the day, what is over by then stands as it is in a window that ends as much sooner.
  const stays = trials.isMovable(window);
  const within = (visits: typeof most.visits, longerBy: number): number =>
    stays ? Math.min(longerBy, Math.max(low, needed(clear, lastEnds(visits)))) : longerBy;
  let high = within(most.visits, until);
  for (let middle = low; low < high; middle = Math.floor((low + high) / 2)) {
    const answer = trials.solve(trial(middle));
    if (answer.done) high = within(answer.visits, middle);
    else {
      const more =
        middle === bound ? overdrawnMinutes(trials.problem(trial(middle)), heads.starts) : 0;
      low = Math.min(high, middle + Math.max(1, more));
      isLeast = answer.proven || more > 0;
    }
  }
  return { least: high + (window.end - window.start) / MINUTE, proven: isLeast };
}

/**
 * When each task must be clear of the window as it is, in minutes after its start: with a later end it is as much later.
 * Infinity where the end of the window does not say: outside, or with an isolation of times of its own.
 */
function clearTimes({ skeleton, book }: Trials, window: AccessWindow): readonly number[] {
  const base = Math.floor(window.start / MINUTE) * MINUTE;
  const ofGroup = skeleton.groups.map(({ activity, needs }) => {
    if (activity.place === 'outside' || hasOwnTimes(window, activity)) return Infinity;
    return (window.end - base) / MINUTE - book.usable.tail(needs);
  });
  return skeleton.activities.map((_, index) => ofGroup[skeleton.groupOf[index]!]!);
}

/** Minutes by which the end must move for each task to be over by a moment of its own. */
function needed(clear: readonly number[], ends: readonly number[]): number {
  let most = Number.NEGATIVE_INFINITY;
  clear.forEach((by, task) => {
    if (by < Infinity) most = Math.max(most, Math.ceil(ends[task]! - by));
  });
  return most;
}

/** Whether some section that the work needs is dead in times of its own, which no later end makes longer. */
function hasOwnTimes(window: AccessWindow, { isolation }: Activity): boolean {
  return window.isolation.some(({ section, during }) => during && isolation.includes(section));
}
