// A small independent search, to refute claims of optimality. For a few activities it tries every order and places each
// activity as early as the check allows. A plan found that is better than one claimed to be proven best refutes the
// claim.
import { checkAmounts } from './amounts.js';
import { checkLineState } from './line-state.js';
import { checkOrder } from './order.js';
import { checkSamePlace } from './same-place.js';
import { checkSupplies, presenceOf } from './supplies.js';
import { clockOf } from './clock.js';
import type { PlacedWork } from './types.js';
import type { Ledgers } from './usable.js';
import { checkWhere, takes } from './where.js';
import { MINUTE, type Activity, type Instant, type Plan } from './plan-types.js';
import { jobsOf, type Job } from './work.js';

/** Limits of the search: activities, and start times tried for each. */
const MAX_ACTIVITIES = 4;
const MAX_STARTS = 60;
/** Limit on placements checked, so that checking a plan stays fast. */
const MAX_CHECKS = 500;

/**
 * Plans with all work placed and no faults. Yields none when the plan is too large, has work outside windows, or no
 * order succeeds.
 */
export function* smallPlans(plan: Plan, ledgers: Ledgers): Generator<ReadonlyMap<string, Job>> {
  const { jobs: none } = jobsOf(plan, []);
  const open = [...none.values()].filter(({ left }) => left > 0);
  if (open.length === 0 || open.length > MAX_ACTIVITIES) return;
  if (open.some(({ activity }) => activity.place === 'outside')) return;
  const clock = clockOf(plan.zone);
  const edges = resourceEdges(plan, clock);

  let checks = 0;
  const holds = (placements: readonly PlacedWork[], whole: boolean): boolean => {
    checks += 1;
    let faults = 0;
    const count = (): void => void (faults += 1);
    const { jobs } = jobsOf(plan, placements);
    for (const job of jobs.values()) checkAmounts(job, count);
    checkWhere(plan, jobs, ledgers, count);
    checkOrder(plan, jobs, count);
    checkSupplies(plan.resources, jobs, clock, count);
    checkSamePlace(jobs, count);
    // Whether opened work is made good can only be checked once everything is placed.
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
      if (checks > MAX_CHECKS) return;
      const rest = left.filter((item) => item !== job);
      for (const piece of firstPieces(job, placed)) yield* from([...placed, piece], rest);
    }
  }

  /** In each window, the earliest place for all that is left of an activity, given what is placed. */
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
      .slice(0, MAX_STARTS);
  }

  yield* from([], open);
}

/** When the capacity of a resource changes, within the plan's windows. */
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
