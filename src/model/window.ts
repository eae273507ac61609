import type { DailyBand, Instant, Interval } from '../calendar/index.js';

/** How far the booking of a window has come. A withdrawn window stays in the plan and takes no work. */
export type WindowStatus = 'requested' | 'offered' | 'confirmed' | 'withdrawn';

export const windowStatuses: readonly WindowStatus[] = [
  'requested',
  'offered',
  'confirmed',
  'withdrawn',
];

/** An electrical section made dead in a window. Without times of its own it is dead whenever the window asks for it. */
export interface IsolatedSection {
  readonly section: string;
  /**
   * The only times in which the section may be isolated, earthed and given back: stretches, and bands of the day by the
   * clocks of the window's zone, which come again each day. What of them lies outside the window does not count.
   */
  readonly during?: readonly (Interval | DailyBand)[];
}

/** A booked stretch of time in which trains are stopped: a possession of a few hours or a blockade of days. */
export interface AccessWindow {
  readonly id: string;
  readonly title: string;
  readonly start: Instant;
  readonly end: Instant;
  /** IANA zone in which the window's times are written and read. */
  readonly zone: string;
  /** Lines blocked. Empty: the window names none, so any line is served. */
  readonly lines: readonly string[];
  /** Extent in metres of chainage, `from` <= `to`. Absent: not limited. */
  readonly extent?: Extent;
  readonly isolation: readonly IsolatedSection[];
  readonly status: WindowStatus;
  /** Name of the list of trains due after the booked end; free text otherwise. */
  readonly trainsAfter: string;
  /** Share of a day's trains that it cancels, re-routes or replaces, in per cent; absent: not said. */
  readonly trainsHitPercent?: number;
  /** When the window entered the plan; absent: not said. */
  readonly addedAt?: Instant;
}

/** A stretch of railway in metres of chainage, `from` <= `to`. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}
