import type { Placement } from '../planner/fit/types.js';
import type { PlanDocument } from '../model/index.js';
import { account, overrunCost, type Account, type AccountInputs } from '../price/index.js';
import { costInputs } from './cost-inputs.js';
import { namedWindow } from './named-window.js';
import { sitePlan } from './site/site-plan.js';

/** What was recorded of one late handback. */
export interface AccountRequest extends Pick<
  AccountInputs,
  'actualHandback' | 'trainActuals' | 'standingActuals' | 'chargeActuals' | 'claims'
> {
  readonly window: string;
  /** The plan of the work, for what stood by where no time sheet is given. */
  readonly placements?: readonly Placement[];
  /** The overrun that was foreseen, in whole minutes; absent: no forecast stands beside the account. */
  readonly foreseenMinutes?: number;
}

/**
 * The account after a late handback, every row with its formula, its claimant and what shows it.
 *
 * @throws {RangeError} When the document has no price book or no such window, or as `account` of the price room.
 */
export function accountOf(document: PlanDocument, request: AccountRequest): Account {
  const { prices, holidays } = document;
  if (!prices) throw new RangeError('the plan has no price book');
  const { plan, trains } = sitePlan(document);
  const { window: id, placements, foreseenMinutes, ...recorded } = request;
  const window = namedWindow(plan, id);
  const inputs = costInputs({ plan, trains, prices }, window, holidays, placements);
  return account({
    ...inputs,
    ...recorded,
    ...(foreseenMinutes !== undefined && {
      forecast: overrunCost({ ...inputs, overrunMinutes: foreseenMinutes }),
    }),
  });
}
