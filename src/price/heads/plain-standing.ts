import type { StandingRule } from '../../model/price-book.js';

/** The rule of a book that says nothing of standing: the plain rate. */
export const plainStanding: StandingRule = {
  labour: [],
  factors: [],
  combine: 'highest',
  leastHours: 'call-out',
  blockMinutes: 1,
  onSite: [],
};
