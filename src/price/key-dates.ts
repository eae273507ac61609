import {
  addMinutes,
  DAY,
  dayAt,
  lengthMinutes,
  localTimeOf,
  momentOn,
  type Instant,
} from '../calendar/index.js';
import type { Placement } from '../planner/fit/types.js';
import { unitsLeft, type Activity, type Phrase, type PriceBook } from '../model/index.js';
import type { KeyDatePrice } from '../model/price-book.js';
import { unnamedKeyDate } from '../model/unnamed-key-date.js';
import { Big } from 'big.js';
import { input } from './heads/head.js';
import { decimalText, minorOf, parseMoney } from './money.js';
import { sayPrice, sumOf } from './say-price.js';
import type { PriceInput } from './types.js';

/** A key date of a package and whether the plan meets it. */
export interface KeyDateState {
  readonly package: string;
  readonly due: Instant;
  /** Finish of the last work; null while some of it is unplaced. */
  readonly forecast: Instant | null;
  /** Window of the last work; null when it is outside every window or `forecast` is null. */
  readonly window: string | null;
}

/** The state of each key date of each package, in activity order. Finished work has met its date. */
export function keyDateStates(
  activities: readonly Activity[],
  placements: readonly Placement[],
): readonly KeyDateState[] {
  const groups = new Map<string, Activity[]>();
  for (const activity of activities) {
    if (activity.keyDate === undefined || unitsLeft(activity.work) === 0) continue;
    const key = JSON.stringify([activity.package, activity.keyDate]);
    groups.set(key, [...(groups.get(key) ?? []), activity]);
  }
  return [...groups.values()].map((group): KeyDateState => {
    const base = { package: group[0]!.package, due: group[0]!.keyDate! };
    const visits = group.map((activity) =>
      placements.filter((each) => each.activity === activity.id),
    );
    const placed = visits.map((some) =>
      some.reduce((sum, placement) => sum + (placement.units ?? 1), 0),
    );
    if (group.some((activity, i) => placed[i]! < unitsLeft(activity.work)))
      return { ...base, forecast: null, window: null };
    const last = visits
      .flat()
      .reduce((latest, placement) => (placement.to > latest.to ? placement : latest));
    return { ...base, forecast: last.to, window: last.window };
  });
}

/** The book's price for a package's key dates; undefined when missing one costs nothing. */
export function keyDatePriceOf(book: PriceBook, name: string): KeyDatePrice | undefined {
  return (
    book.keyDates.find((date) => date.package === name) ??
    book.keyDates.find((date) => date.package === undefined)
  );
}

/**
 * Days by which `at` is after `due`, with fractions; 0 when it is not late. A day runs from a clock time to the same
 * clock time of the next day, so a day with a clock change counts as one.
 */
export function daysLate(due: Instant, at: Instant, zone: string): number {
  if (at <= due) return 0;
  const day = dayAt(due, zone);
  const { hour, minute } = localTimeOf(due, zone);
  const sameClock = (days: number): Instant =>
    days === 0 ? due : momentOn(day + days, hour * 60 + minute, zone);
  let days = Math.max(1, Math.ceil((at - due) / DAY) - 1);
  while (sameClock(days) < at) days += 1;
  return days;
}

/** Cost of being late, in minor units (pence) rounded once, and how it was calculated. */
export interface KeyDateCost {
  readonly minor: number;
  readonly days: number;
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
}

/** Cost of finishing at `at` work due at `due`; zero when on time. */
export function keyDateCost(
  price: KeyDatePrice,
  due: Instant,
  at: Instant,
  zone: string,
  book: PriceBook,
): KeyDateCost {
  const days = daysLate(due, at, zone);
  const inputs: readonly PriceInput[] = [
    input('input-days-late', days, 'd'),
    input('input-a-day', price.perDay, book.currency),
    input('input-once', price.once, book.currency),
    ...(price.cap === undefined ? [] : [input('input-not-more', price.cap, book.currency)]),
  ];
  if (days === 0) return { minor: 0, days, formula: sayPrice('key-date-in-time'), inputs };
  const minutes = lengthMinutes({ start: due, end: at });
  const whole = price.partDay === 'whole';
  const [count, under] = whole ? [days, 1] : [minutes, 1440];
  const over = new Big(price.perDay).times(count).plus(new Big(price.once).times(under));
  const exact = minorOf(over, book, under);
  const cap = price.cap === undefined ? Infinity : parseMoney(price.cap, book);
  const minor = Math.min(exact, cap);
  const money = (amount: string) => ({ amount, currency: book.currency });
  return {
    minor,
    days,
    formula: sayPrice('key-date-cost', {
      count,
      by: whole ? 'day' : 'minute',
      perDay: Number(price.perDay) > 0 ? money(price.perDay) : null,
      once: Number(price.once) > 0 ? money(price.once) : null,
      cap: exact > cap ? money(price.cap!) : null,
      total: sumOf(minor, book),
    }),
    inputs: whole ? inputs : [input('input-minutes-late', minutes, 'min'), ...inputs],
  };
}

/** Finish assumed after an overrun: the handback when the line is handed back late, else as planned. */
export const endAfter = (planned: Instant, bookedEnd: Instant, overrun: number): Instant =>
  overrun === 0 ? planned : Math.max(planned, addMinutes(bookedEnd, overrun));

/** A key date of the plan and the cost of missing it. Money is decimal text. */
export interface KeyDateLine extends KeyDateState {
  /** Null: unknown, as there is no forecast. */
  readonly daysLate: number | null;
  /** Null: no forecast, or no price in the book. */
  readonly amount: string | null;
  readonly title: Phrase;
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
  readonly source: string;
}

/** What somebody named the price of a key date; null where nobody did. */
export const givenName = ({ name }: KeyDatePrice): string | null =>
  name === unnamedKeyDate ? null : name;

/** What the price of a key date is called, for a package. */
export function keyDateTitle(price: KeyDatePrice | undefined, pack: string): Phrase {
  const name = price ? givenName(price) : null;
  return name === null ? sayPrice('key-date-of', { package: pack }) : `${name}: ${pack}`;
}

/** Each key date of the plan and its cost as planned. Empty when the book prices no key dates. */
export function keyDateLines(
  activities: readonly Activity[],
  placements: readonly Placement[],
  zone: string,
  book: PriceBook,
): readonly KeyDateLine[] {
  if (book.keyDates.length === 0) return [];
  return keyDateStates(activities, placements).map((state): KeyDateLine => {
    const { due, forecast } = state;
    const price = keyDatePriceOf(book, state.package);
    const title = keyDateTitle(price, state.package);
    const source = price?.source ?? book.source;
    const late = forecast === null ? null : daysLate(due, forecast, zone);
    const none = { ...state, daysLate: late, amount: null, title, inputs: [], source };
    if (forecast === null) return { ...none, formula: sayPrice('key-date-no-place') };
    if (!price) return { ...none, formula: sayPrice('key-date-no-price') };
    const { minor, formula, inputs } = keyDateCost(price, due, forecast, zone, book);
    return { ...none, amount: decimalText(minor, book), formula, inputs };
  });
}
