import type { Instant } from '../calendar/index.js';
import type { Extent } from './window.js';

/** One thing that must have happened first. The gap is clock time (curing), never negative. */
export interface Link {
  /** Id of the activity waited for. */
  readonly activity: string;
  /** Whether its finish or its start is waited for. */
  readonly from: 'finish' | 'start';
  readonly gapMinutes: number;
  /** Waits first until what was finished has cured, by the plan's concrete and temperatures; then the gap. */
  readonly cured?: true;
}

/** Three-point spread of a duration in minutes; `low` <= most likely <= `high`. */
export interface Spread {
  readonly low: number;
  readonly high: number;
}

/** A piece of work that once begun runs to its end in one go. */
export interface WholeWork {
  readonly kind: 'whole';
  readonly minutes: number;
  readonly spread?: Spread;
}

/**
 * Repeated units: work may stop after any unit. Each return pays `setUpMinutes` first, each stop `makeSafeMinutes`
 * last. The spread, where given, is of one unit.
 */
export interface UnitWork {
  readonly kind: 'units';
  readonly units: number;
  /** Units already in place. 0 <= done <= units. */
  readonly done: number;
  readonly minutesPerUnit: number;
  readonly setUpMinutes: number;
  readonly makeSafeMinutes: number;
  readonly spread?: Spread;
}

export interface Demand {
  readonly resource: string;
  readonly amount: number;
}

/**
 * What makes the line fit to run again once an activity has begun: activities that must be finished in the same window,
 * or `none`, which says that the line is fit to run after it.
 */
export type MadeGoodBy = readonly string[] | 'none';

/** Whether other work may go on at the same lines and place in the same minutes. */
export type Occupies = 'alone' | 'shared';

/** A limit on speed left on the line. */
export interface SpeedLimit {
  readonly value: number;
  readonly unit: 'mph' | 'km/h';
}

/** Work to be done, with what it needs. */
export interface Activity {
  /** Unique in the plan. */
  readonly id: string;
  /** The work package it belongs to. Fits and floats are given by package. */
  readonly package: string;
  readonly title: string;
  readonly after: readonly Link[];
  readonly work: WholeWork | UnitWork;
  /** Lines that must be blocked. Empty: none in particular. */
  readonly lines: readonly string[];
  readonly extent?: Extent;
  /** Electrical sections that must be dead. */
  readonly isolation: readonly string[];
  readonly resources: readonly Demand[];
  readonly loud: boolean;
  /** Names of the closed time of the plan's rules that this work heeds; absent: none. */
  readonly heeds?: readonly string[];
  /** `inside` needs the closure; `outside` does not (rigging in a yard). */
  readonly place: 'inside' | 'outside';
  readonly notBefore?: Instant;
  /** The activity must have finished by this moment. */
  readonly keyDate?: Instant;
  /** The planner's fixed choice of window; absent: free. */
  readonly window?: string;
  /** Absent: not said, and the plan names it where it matters. Never an empty list. */
  readonly madeGoodBy?: MadeGoodBy;
  /** Absent: counts as shared, with a note that says so. */
  readonly occupies?: Occupies;
  /** A shift that runs late may leave it out and hand back without it. */
  readonly mayWait?: true;
  /** Left on the line until a later activity at the same place lifts it; absent: not said. */
  readonly speedAfter?: SpeedLimit;
}

/** Units still to be placed; 1 for a whole piece of work. */
export function unitsLeft(work: WholeWork | UnitWork): number {
  return work.kind === 'whole' ? 1 : work.units - work.done;
}

/** Minutes for the remaining work done in one visit, set up and make safe included. 0 when nothing is left. */
export function minutesInOneVisit(work: WholeWork | UnitWork): number {
  if (work.kind === 'whole') return work.minutes;
  const left = unitsLeft(work);
  return left === 0 ? 0 : work.setUpMinutes + left * work.minutesPerUnit + work.makeSafeMinutes;
}
