import { startOfLocalDay, type Instant } from '../../src/calendar/index.js';
import type { Milestone } from '../../src/engine/index.js';

export const WEEKS = 12;

/** A milestone on the strip. */
export interface StripMark {
  readonly milestone: Milestone;
  readonly x: number;
  /** Row from the top, from 0. */
  readonly row: number;
}

/** The stretch of time that the strip shows. */
export interface ComingWeeks {
  readonly from: Instant;
  readonly to: Instant;
  /** Local midnights, one a week, from the day after `from` on. */
  readonly weeks: readonly Instant[];
}

/** Twelve weeks from a moment, by the local calendar of a zone. Half-open. */
export function comingWeeks(now: Instant, zone: string): ComingWeeks {
  return {
    from: now,
    to: startOfLocalDay(now, zone, WEEKS * 7),
    weeks: Array.from({ length: WEEKS }, (_, k) => startOfLocalDay(now, zone, k * 7)).slice(1),
  };
}

/** Milestones still to come within the stretch, each in the first row where it covers no other. O(n x rows). */
export function stripMarks(
  milestones: readonly Milestone[],
  stretch: ComingWeeks,
  x: (at: Instant) => number,
  apart: number,
): StripMark[] {
  const last: number[] = [];
  return milestones
    .filter(
      (milestone) =>
        milestone.state === 'due' && milestone.due >= stretch.from && milestone.due < stretch.to,
    )
    .sort((a, b) => a.due - b.due)
    .map((milestone) => {
      const at = x(milestone.due);
      const free = last.findIndex((value) => at - value >= apart);
      const row = free < 0 ? last.length : free;
      last[row] = at;
      return { milestone, x: at, row };
    });
}
