import type { DayNumber, Instant, Interval } from '../../calendar/index.js';

/** One turn of duty given to one crew, or to one person: whoever the limits are to be held to. */
export interface Assignment {
  readonly id: string;
  readonly crew: string;
  readonly start: Instant;
  readonly end: Instant;
  /** Travelling each way, before `start` and after `end`. */
  readonly travelMinutes: number;
}

/** A turn as one limit sees it: `duty` holds the travelling where that counts. */
export interface Turn {
  readonly assignment: Assignment;
  readonly duty: Interval;
  /** Local day on which the duty starts. */
  readonly day: DayNumber;
  /** Local day on which its night starts; absent when it is no night turn. */
  readonly night?: DayNumber;
}
