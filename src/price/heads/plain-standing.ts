import type { StandingRule } from '../../model/price-book.js';

/** The rule for a book without one for standing time: the plain rate. */
export const plainStanding: StandingRule = {
  labour: [],
  factors: [],
  combine: 'highest',
  leastHours: 'call-out',
  blockMinutes: 1,
  onSite: [],
};
