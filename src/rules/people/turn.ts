import type { DayNumber, Interval } from '../../calendar/index.js';
import type { Assignment } from '../../model/index.js';

/** A turn as one limit counts it: `duty` includes travel where travel counts. */
export interface Turn {
  readonly assignment: Assignment;
  readonly duty: Interval;
  /** Local day on which the duty starts. */
  readonly day: DayNumber;
  /** Local day on which its night starts; absent when it is not a night turn. */
  readonly night?: DayNumber;
}
