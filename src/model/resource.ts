import type { Instant } from '../calendar/index.js';

/** One row of availability. Rows of the same resource add up where they overlap in time. */
export interface Availability {
  readonly capacity: number;
  /** Available from this moment on; absent: always was. */
  readonly from?: Instant;
  /** Available until this moment; absent: always will be. */
  readonly to?: Instant;
  /** Every day from this minute of the local day … */
  readonly dailyFromMinute?: number;
  /** … to this one; at or before `dailyFromMinute` means on the next day. */
  readonly dailyToMinute?: number;
}

/** Plant, a gang, a person with a competence: what limits how much can be done at once. */
export interface Resource {
  readonly id: string;
  readonly availability: readonly Availability[];
  /** In the plan's currency. */
  readonly ratePerHour?: number;
  /** Least hours paid for each call-out. */
  readonly leastHours?: number;
  /** Crews that take turns. */
  readonly crews?: number;
}
