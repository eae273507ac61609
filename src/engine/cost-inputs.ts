import type { Placement } from '../planner/fit/types.js';
import type { AccessWindow, Plan, PriceBook, Train } from '../model/index.js';

/** A plan with what its prices are worked out from. */
export interface Priced {
  readonly plan: Plan;
  readonly trains: readonly Train[];
  readonly prices: PriceBook;
}

/** What a price and an account of one window both stand on; plant and labour only where the plan of the work is given. */
export function costInputs(
  { plan, trains, prices }: Priced,
  window: AccessWindow,
  holidays?: readonly string[],
  placements?: readonly Placement[],
) {
  return {
    window,
    prices,
    trains,
    resources: plan.resources,
    ...(holidays && { holidays }),
    ...(placements && { placements, activities: plan.activities }),
  };
}
