// A small search of the check's own. Of a few activities every order is tried, each put down as soon as the check itself
// finds nothing against it; a plan found so that is better than what is told as proven shows that it is not.
import { checkAmounts } from './amounts.js';
import { checkLineState } from './line-state.js';
import { checkOrder } from './order.js';
import { checkSamePlace } from './same-place.js';
import { checkSupplies, presenceOf } from './supplies.js';
import { clockOf } from './clock.js';
import type { PlacedWork } from './types.js';
import type { Ledgers } from './usable.js';
import { checkWhere, takes } from './where.js';
import { MINUTE, type Activity, type Instant, type Plan } from './words.js';
import { jobsOf, type Job } from './work.js';

/** Up to so many activities, and so many moments at which one could begin; beyond, nothing is searched. */
const MOST = 4;
const MOST_STARTS = 60;
/** Placements looked at in all, so that the check of a plan stays quick. */
const MOST_LOOKS = 500;

/**
 * Plans in which all work is placed and the check finds nothing wrong; none where the plan is too large, where some of it
 * is not for one window, or where no order leads to one.
 */
export function* smallPlans(plan: Plan, ledgers: Ledgers): Generator<ReadonlyMap<string, Job>> {
  const { jobs: none } = jobsOf(plan, []);
  const open = [...none.values()].filter(({ left }) => left > 0);
  if (open.length === 0 || open.length > MOST) return;
  if (open.some(({ activity }) => activity.place === 'outside')) return;
  const clock = clockOf(plan.zone);
  const edges = resourceEdges(plan, clock);

  let looks = 0;
  const holds = (placements: readonly PlacedWork[], whole: boolean): boolean => {
    looks += 1;
    let faults = 0;
    const count = (): void => void (faults += 1);
    const { jobs } = jobsOf(plan, placements);
    for (const job of jobs.values()) checkAmounts(job, count);
    checkWhere(plan, jobs, ledgers, count);
    checkOrder(plan, jobs, count);
    checkSupplies(plan.resources, jobs, clock, count);
    checkSamePlace(jobs, count);
    // What opens the line may only be judged once what makes it good is down too.
    if (whole) checkLineState(jobs, count);
    return faults === 0;
  };

  function* from(
    placed: readonly PlacedWork[],
    left: readonly Job[],
  ): Generator<ReadonlyMap<string, Job>> {
    if (left.length === 0) {
      if (holds(placed, true)) yield jobsOf(plan, placed).jobs;
      return;
    }
    for (const job of left) {
      if (looks > MOST_LOOKS) return;
      const rest = left.filter((item) => item !== job);
      for (const piece of firstPieces(job, placed)) yield* from([...placed, piece], rest);
    }
  }

  /** The soonest place of all that is left of an activity in each window, beside what is placed. */
  function* firstPieces(
    { activity, left }: Job,
    placed: readonly PlacedWork[],
  ): Generator<PlacedWork> {
    const { work } = activity;
    const minutes =
      work.kind === 'whole'
        ? work.minutes
        : work.setUpMinutes + left * work.minutesPerUnit + work.makeSafeMinutes;
    for (const window of plan.windows) {
      if (!takes(window, activity)) continue;
      const starts = startsOf(activity, ledgers.of(window, activity).usable, placed);
      for (const start of starts) {
        const piece: PlacedWork = {
          activity: activity.id,
          window: window.id,
          from: start,
          to: start + minutes * MINUTE,
          ...(work.kind === 'units' && { units: left }),
        };
        if (!holds([...placed, piece], false)) continue;
        yield piece;
        break;
      }
    }
  }

  function startsOf(
    { notBefore, after }: Activity,
    usable: readonly { readonly start: Instant; readonly end: Instant }[],
    placed: readonly PlacedWork[],
  ): Instant[] {
    const gaps = [0, ...after.map((link) => link.gapMinutes * MINUTE)];
    const moments = [
      ...usable.map(({ start }) => start),
      ...placed.flatMap(({ from, to }) => gaps.flatMap((gap) => [to + gap, from + gap])),
      ...edges,
      ...(notBefore === undefined ? [] : [notBefore]),
    ].map((at) => Math.ceil(at / MINUTE) * MINUTE);
    return [...new Set(moments)]
      .filter((at) => usable.some(({ start, end }) => start <= at && at < end))
      .sort((a, b) => a - b)
      .slice(0, MOST_STARTS);
  }

  yield* from([], open);
}

/** When what there is of some resource changes, within the plan's windows. */
function resourceEdges(plan: Plan, clock: ReturnType<typeof clockOf>): Instant[] {
  const within = {
    start: Math.min(...plan.windows.map((window) => window.start)),
    end: Math.max(...plan.windows.map((window) => window.end)),
  };
  return plan.resources.flatMap(({ availability }) =>
    availability.flatMap((row) =>
      presenceOf(row, within, clock).flatMap(({ start, end }) => [start, end]),
    ),
  );
}
