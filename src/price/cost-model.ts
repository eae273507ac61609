import { addMinutes } from '../calendar/index.js';
import type { AccessWindow, Phrase, Train } from '../model/index.js';
import type { HeadOfCost, PriceBook } from '../model/price-book.js';
import { trainsAfter } from './held-trains.js';
import { damagesHead } from './heads/damages.js';
import { fixedHead, lengthHead } from './heads/fixed.js';
import type { CostHead, HeadContext } from './heads/head.js';
import { keyDateHead, plannedKeyDateHead, type PricedKeyDate } from './heads/key-date.js';
import { lateOpeningHead } from './heads/late-opening.js';
import { delayByBands, delayByTrain } from './heads/operator-delay.js';
import { reBookingHead, type LostUnits } from './heads/re-booking.js';
import { restrictionHeads } from './heads/restriction.js';
import { plainStanding } from './heads/plain-standing.js';
import { standingHead } from './heads/standing.js';
import { keyDatePriceOf, keyDateStates } from './key-dates.js';
import { sayPrice } from './say-price.js';
import { speedLeftBy, speedText } from './speed-after.js';
import { onSiteRows, standingIn, type StandingInputs } from './standing.js';
import type { OnSiteRow } from './types.js';

/** Inputs for the cost of an overrun. */
export interface CostInputs extends StandingInputs {
  readonly window: AccessWindow;
  readonly prices: PriceBook;
  /** All trains of the plan. Those of other windows, or due before the booked end, are ignored. */
  readonly trains: readonly Train[];
  /** Local dates of public holidays: `2027-08-30`. */
  readonly holidays?: readonly string[];
  readonly lostUnits?: LostUnits;
  /**
   * Which costs of missed key dates count, of those whose last work is in the window: all (the default), only what an
   * overrun adds, or none.
   */
  readonly keyDates?: 'all' | 'overrun' | 'none';
}

/** The heads of cost of a window, each able to price any overrun up to `maxMinutes`. */
export interface CostModel {
  readonly window: AccessWindow;
  readonly book: PriceBook;
  readonly trains: readonly Train[];
  readonly maxMinutes: number;
  readonly heads: readonly CostHead[];
  /** Whether the book's basis makes a head part of the total. */
  readonly counts: (head: HeadOfCost) => boolean;
  /** Plant and people with a rate, each with its cost as planned. */
  readonly onSite: readonly OnSiteRow[];
  readonly notes: readonly Phrase[];
  /** Items without a price, and the overrun in minutes from which each applies. */
  readonly notPriced: readonly { readonly phrase: Phrase; readonly fromMinute: number }[];
}

/** @throws {RangeError} When `maxMinutes` is not a whole number of minutes, 0 or more. */
export function costModel(inputs: CostInputs, maxMinutes: number): CostModel {
  if (!Number.isInteger(maxMinutes) || maxMinutes < 0)
    throw new RangeError(`an overrun is a whole number of minutes, not ${maxMinutes}`);
  const { window, prices: book } = inputs;
  const notes: Phrase[] = [];
  const notPriced: { phrase: Phrase; fromMinute: number }[] = [];
  const context: HeadContext = {
    window,
    book,
    trains: trainsAfter(window, inputs.trains),
    holidays: inputs.holidays ?? [],
    maxMinutes,
    note: (phrase) => void notes.push(phrase),
    notPriced: (phrase, fromMinute = 0) => void notPriced.push({ phrase, fromMinute }),
    handback: (overrun) => addMinutes(window.end, overrun),
  };
  const heads: CostHead[] = [];
  if (book.delay?.by === 'train') heads.push(delayByTrain(context, book.delay));
  if (book.delay?.by === 'bands') heads.push(delayByBands(context, book.delay));
  if (!book.delay) context.notPriced(sayPrice('no-delay-price'));
  const rule = book.standing ?? plainStanding;
  const standing = standingIn(window, inputs, context);
  for (const item of standing) heads.push(standingHead(context, rule, item));
  for (const charge of book.fixed) heads.push(fixedHead(context, charge));
  for (const threshold of book.lengths) {
    const { amount } = threshold;
    if (amount !== undefined) heads.push(lengthHead(context, { ...threshold, amount }));
  }
  for (const charge of book.lateOpening) heads.push(lateOpeningHead(context, charge));
  heads.push(...restrictions(inputs, context));
  if (inputs.lostUnits) heads.push(reBookingHead(context, inputs.lostUnits));
  else context.notPriced(sayPrice('left-over-unpriced'));
  for (const date of keyDatesIn(inputs, context)) {
    const planned = plannedKeyDateHead(context, date);
    if (inputs.keyDates !== 'overrun' && planned.minorAt(0) > 0) heads.push(planned);
    heads.push(keyDateHead(context, date));
  }
  if (book.damages) heads.push(damagesHead(context, book.damages));
  return {
    window,
    book,
    trains: context.trains,
    maxMinutes,
    heads,
    counts: countedHeads(book),
    onSite: onSiteRows(window, standing, book, context.holidays),
    notes,
    notPriced,
  };
}

/** Priced key dates whose last work is planned in the window. */
function keyDatesIn(
  { window, prices: book, placements, activities, keyDates }: CostInputs,
  { notPriced }: HeadContext,
): readonly PricedKeyDate[] {
  if (keyDates === 'none') return [];
  if (!placements || !activities) {
    notPriced(sayPrice('key-dates-without-plan'));
    return [];
  }
  const without = new Set<string>();
  const priced = keyDateStates(activities, placements).flatMap((date): PricedKeyDate[] => {
    const price = keyDatePriceOf(book, date.package);
    if (!price) {
      if (date.window === window.id) without.add(date.package);
      return [];
    }
    const { forecast } = date;
    if (forecast === null) notPriced(sayPrice('key-date-unplaced', { package: date.package }));
    return forecast !== null && date.window === window.id
      ? [{ date: { ...date, forecast }, price }]
      : [];
  });
  for (const name of without) notPriced(sayPrice('key-date-unpriced', { package: name }));
  return priced;
}

/** Cost of a speed restriction by the book. Without a price, reports it as not priced and names what the plan leaves. */
function restrictions(
  { window, activities, placements, prices: book }: CostInputs,
  context: HeadContext,
): readonly CostHead[] {
  const left = activities && placements ? speedLeftBy(window, activities, placements) : [];
  if (book.restriction) return restrictionHeads(context, book.restriction, left);
  context.notPriced(sayPrice('no-restriction-price'));
  for (const speedLeft of left)
    context.notPriced(
      sayPrice('speed-left-unpriced', {
        speed: speedText(speedLeft),
        activity: speedLeft.activity,
      }),
    );
  return [];
}

/** Damages and the loss that they replace are never both counted. */
function countedHeads(book: PriceBook): (head: HeadOfCost) => boolean {
  const replaced = new Set(book.damages?.replaces ?? []);
  return (head) =>
    book.basis === 'damages' ? head === 'damages' || !replaced.has(head) : head !== 'damages';
}
