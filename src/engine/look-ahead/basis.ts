import type { Instant } from '../../calendar/index.js';
import type { Plan, Worded } from '../../model/index.js';
import type { Allocation } from '../../planner/search/types.js';
import type { Milestone } from '../../rules/booking/index.js';

/** What the weeks to come are told from. */
export interface LookAheadBasis {
  readonly plan: Plan;
  readonly allocation: Allocation;
  /** Booking dates of the windows, as they stand at `now`. */
  readonly milestones: readonly Milestone[];
  /** Time of a window in which nobody is rostered; absent: there is no roster. */
  readonly unmanned?: ReadonlyMap<string, number>;
  /** What of the plan no longer holds in the tables as they are. */
  readonly broken: readonly (Worded & { readonly activity: string })[];
  readonly now: Instant;
}
