import { exactOf, minorOf } from '../money.js';
import { input, type CostHead, type HeadContext } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

/** Work planned for the window and not done, and the cost of doing it in another. */
export interface LostUnits {
  readonly units: number;
  /** Decimal text. */
  readonly pricePerUnit: string;
  /** What a unit is: `panels of track`. */
  readonly what?: string;
  readonly source?: string;
}

/** The cost of re-booking lost work: the same at every overrun. @throws {RangeError} When the count is negative or not whole. */
export function reBookingHead(context: HeadContext, lost: LostUnits): CostHead {
  const { book } = context;
  if (!Number.isInteger(lost.units) || lost.units < 0)
    throw new RangeError(`lost units must be a whole number, not ${lost.units}`);
  const sum = minorOf(exactOf(lost.pricePerUnit).times(lost.units), book);
  const what = lost.what ?? sayPrice('units');
  return {
    head: 're-booking',
    code: 're-booking',
    title: sayPrice('left-over-booked-again'),
    source: lost.source ?? sayPrice('given-by-planner'),
    minorAt: () => sum,
    explainAt: () => ({
      formula: sayPrice('lost-units-sum', {
        units: lost.units,
        what,
        each: { amount: lost.pricePerUnit, currency: book.currency },
        total: sumOf(sum, book),
      }),
      inputs: [
        input('input-left-over', lost.units, what),
        input('input-price-of-one', lost.pricePerUnit, book.currency),
      ],
    }),
    stepsTo: () => [],
  };
}
