import { Big } from 'big.js';
import { minutesBetween, type Interval } from '../calendar/index.js';
import type { AccessWindow, Activity, Phrase, PriceBook, Resource } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';
import { input } from './heads/head.js';
import { plainStanding } from './heads/plain-standing.js';
import { decimalText, minorOf } from './money.js';
import { staysIn } from './on-site.js';
import { factorRuns, paidBy } from './pay-factors.js';
import { sayPrice, sumOf } from './say-price.js';
import type { PriceInput } from './types.js';

/** What plant or labour costs for its planned time in one window. */
export interface CallOut {
  readonly resource: string;
  readonly window: string;
  /** Decimal text, rounded once. */
  readonly amount: string;
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
  readonly source: Phrase;
}

export interface CallOutInputs {
  readonly resources: readonly Resource[];
  readonly activities: readonly Activity[];
  readonly placements: readonly Placement[];
  readonly prices: PriceBook;
  readonly holidays: readonly string[];
}

/**
 * Cost of the planned plant and labour of one window, for resources with a rate. Each unit is paid from its call to its
 * departure, at least its minimum hours, each minute at the pay factor for that local time. The second of two is paid
 * while two are in use.
 */
export function callOuts(window: AccessWindow, inputs: CallOutInputs): readonly CallOut[] {
  const { onSite } = inputs.prices.standing ?? plainStanding;
  return staysIn(window, { ...inputs, onSite })
    .filter((stay) => stay.resource.ratePerHour !== undefined)
    .map(({ resource, amount, call, leaves }) =>
      paidTime(resource, amount, { start: call, end: leaves }, window, inputs),
    );
}

/** Pay for an amount of a resource over an interval, at least its minimum hours. @throws {RangeError} Without a rate. */
export function paidTime(
  resource: Resource,
  amount: number,
  span: Interval,
  window: AccessWindow,
  { prices: book, holidays }: Pick<CallOutInputs, 'prices' | 'holidays'>,
): CallOut {
  if (resource.ratePerHour === undefined)
    throw new RangeError(`${resource.id} has no rate an hour to price its time by`);
  const least = Math.ceil((resource.leastHours ?? 0) * 60);
  const planned = minutesBetween(span.start, span.end);
  const minutes = Math.max(planned, least);
  const rule = book.standing ?? plainStanding;
  const labour = rule.labour.includes(resource.id);
  const runs = factorRuns(span.start, minutes, window.zone, rule, labour, holidays);
  const weighted = runs.reduce(
    (sum, run) => sum.plus(new Big(run.factor).times(run.toMinute - run.fromMinute)),
    new Big(0),
  );
  const rate = String(resource.ratePerHour);
  const minor = minorOf(weighted.times(amount).times(rate), book, 60);
  return {
    resource: resource.id,
    window: window.id,
    amount: decimalText(minor, book),
    formula: sayPrice('call-out-sum', {
      amount,
      resource: resource.id,
      window: window.id,
      paid: paidBy(runs),
      rate: { amount: rate, currency: book.currency },
      total: sumOf(minor, book),
      planned: minutes > planned ? planned : null,
    }),
    inputs: [
      input('input-amount', amount, resource.id),
      input('input-minutes-paid', minutes, 'min'),
      input('input-minutes-with-factors', weighted.toFixed(), 'min'),
      input('input-rate', rate, `${book.currency}/h`),
    ],
    source: rule.source ?? book.source,
  };
}
