import type { Instant } from '../calendar/index.js';

/** A train booked over the closed stretch after a window's booked end. */
export interface Train {
  readonly id: string;
  readonly passesAt: Instant;
  /** How much a minute of its lateness counts against the rate; 1 for an ordinary train. */
  readonly weight: number;
  /** The window it follows; absent: any window that ends before it. */
  readonly window?: string;
}
