import type { Instant } from '../calendar/index.js';

/** Where and when a piece of work is placed. */
export interface Placement {
  readonly activity: string;
  /** Window it is done in; `null` for outside work, which needs none. */
  readonly window: string | null;
  readonly from: Instant;
  readonly to: Instant;
  /** Units done in this visit, for repeated work. */
  readonly units?: number;
}
