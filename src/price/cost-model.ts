import { addMinutes } from '../calendar/index.js';
import type { AccessWindow, Train } from '../model/index.js';
import type { HeadOfCost, PriceBook } from '../model/price-book.js';
import { trainsAfter } from './held-trains.js';
import { damagesHead } from './heads/damages.js';
import { fixedHead, lengthHead } from './heads/fixed.js';
import type { CostHead, HeadContext } from './heads/head.js';
import { keyDateHead, plannedKeyDateHead, type PricedKeyDate } from './heads/key-date.js';
import { delayByBands, delayByTrain } from './heads/operator-delay.js';
import { reBookingHead, type LostUnits } from './heads/re-booking.js';
import { restrictionHead } from './heads/restriction.js';
import { plainStanding, standingHead } from './heads/standing.js';
import { keyDatePriceOf, keyDateStates } from './key-dates.js';
import { standingIn, type StandingInputs } from './standing-plant.js';

/** What the cost of an overrun is worked out from. */
export interface CostInputs extends StandingInputs {
  readonly window: AccessWindow;
  readonly prices: PriceBook;
  /** Every train of the plan; those of other windows, and those due before the booked end, are left out. */
  readonly trains: readonly Train[];
  /** Local dates of public holidays: `2027-08-30`. */
  readonly holidays?: readonly string[];
  readonly lostUnits?: LostUnits;
  /**
   * Which costs of missed key dates are counted: all of those whose last work is in the window (the default), only what
   * an overrun adds, or none.
   */
  readonly keyDates?: 'all' | 'overrun' | 'none';
}

/** Every head of cost of a window, ready to be asked for any overrun up to `maxMinutes`. */
export interface CostModel {
  readonly window: AccessWindow;
  readonly book: PriceBook;
  readonly trains: readonly Train[];
  readonly maxMinutes: number;
  readonly heads: readonly CostHead[];
  /** Whether a head is part of the total, by the book's basis. */
  readonly counts: (head: HeadOfCost) => boolean;
  readonly notes: readonly string[];
}

/** @throws {RangeError} When `maxMinutes` is not a whole number of minutes, 0 or more. */
export function costModel(inputs: CostInputs, maxMinutes: number): CostModel {
  if (!Number.isInteger(maxMinutes) || maxMinutes < 0)
    throw new RangeError(`an overrun is a whole number of minutes, not ${maxMinutes}`);
  const { window, prices: book } = inputs;
  const notes: string[] = [];
  const context: HeadContext = {
    window,
    book,
    trains: trainsAfter(window, inputs.trains),
    holidays: inputs.holidays ?? [],
    maxMinutes,
    note: (text) => void notes.push(text),
    handback: (overrun) => addMinutes(window.end, overrun),
  };
  const heads: CostHead[] = [];
  if (book.delay?.by === 'train') heads.push(delayByTrain(context, book.delay));
  if (book.delay?.by === 'bands') heads.push(delayByBands(context, book.delay));
  const rule = book.standing ?? plainStanding;
  for (const one of standingIn(window, inputs, context.note))
    heads.push(standingHead(context, rule, one));
  for (const charge of book.fixed) heads.push(fixedHead(context, charge));
  for (const threshold of book.lengths) {
    const { amount } = threshold;
    if (amount !== undefined) heads.push(lengthHead(context, { ...threshold, amount }));
  }
  if (book.restriction) heads.push(restrictionHead(context, book.restriction));
  if (inputs.lostUnits) heads.push(reBookingHead(context, inputs.lostUnits));
  for (const one of keyDatesIn(inputs, context.note)) {
    const planned = plannedKeyDateHead(context, one);
    if (inputs.keyDates !== 'overrun' && planned.minorAt(0) > 0) heads.push(planned);
    heads.push(keyDateHead(context, one));
  }
  if (book.damages) heads.push(damagesHead(context, book.damages));
  return { window, book, trains: context.trains, maxMinutes, heads, counts: counter(book), notes };
}

/** Key dates with a price whose last work the plan has in the window. */
function keyDatesIn(
  { window, prices: book, placements, activities, keyDates }: CostInputs,
  note: (text: string) => void,
): readonly PricedKeyDate[] {
  if (book.keyDates.length === 0 || keyDates === 'none') return [];
  if (!placements || !activities) {
    note('No plan of the work was given, so key dates that an overrun makes late are not priced.');
    return [];
  }
  return keyDateStates(activities, placements).flatMap((date): PricedKeyDate[] => {
    const price = keyDatePriceOf(book, date.package);
    if (!price) return [];
    const { forecast } = date;
    if (forecast === null)
      note(
        `Not all of the work of ${date.package} has a place, so what missing its key date costs is not known.`,
      );
    return forecast !== null && date.window === window.id
      ? [{ date: { ...date, forecast }, price }]
      : [];
  });
}

/** Damages and the loss they stand in place of are never counted together. */
function counter(book: PriceBook): (head: HeadOfCost) => boolean {
  const replaced = new Set(book.damages?.replaces ?? []);
  return (head) =>
    book.basis === 'damages' ? head === 'damages' || !replaced.has(head) : head !== 'damages';
}
