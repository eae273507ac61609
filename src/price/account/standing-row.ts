import { Big } from 'big.js';
import { interval, lengthMinutes } from '../../calendar/index.js';
import { input } from '../heads/head.js';
import { plainStanding } from '../heads/plain-standing.js';
import { decimalText, minorOf } from '../money.js';
import { factorRuns, paidBy } from '../pay-factors.js';
import { sayPrice, sumOf } from '../say-price.js';
import { claimOf, shareOf, sharePercent } from './claims.js';
import type { AccountInputs, AccountRow, StandingActual } from './types.js';

/**
 * A row of plant or labour by recorded time: elapsed minutes, each at the pay factor for its local time.
 * @throws {RangeError} When the resource has no rate, or its time ends before it starts.
 */
export function standingRow(
  inputs: AccountInputs,
  actual: StandingActual,
  counted: boolean,
): AccountRow {
  const { prices: book, window } = inputs;
  const resource = inputs.resources.find((item) => item.id === actual.resource);
  if (resource?.ratePerHour === undefined)
    throw new RangeError(`${actual.resource} has no rate an hour to price its time by`);
  const minutes = lengthMinutes(interval(actual.start, actual.end));
  const rule = book.standing ?? plainStanding;
  const labour = rule.labour.includes(actual.resource);
  const runs = factorRuns(actual.start, minutes, window.zone, rule, labour, inputs.holidays ?? []);
  const weighted = runs.reduce(
    (sum, run) => sum.plus(new Big(run.factor).times(run.toMinute - run.fromMinute)),
    new Big(0),
  );
  const rate = String(resource.ratePerHour);
  const over = weighted.times(actual.amount).times(rate).times(shareOf(actual));
  const minor = minorOf(over, book, 60);
  return {
    head: 'standing',
    code: `standing-${actual.resource}`,
    what: sayPrice('stood-by', {
      amount: actual.amount,
      resource: actual.resource,
      from: { at: actual.start, zone: window.zone },
      to: { at: actual.end, zone: window.zone },
    }),
    amount: decimalText(minor, book),
    counted,
    formula: sayPrice('stood-by-sum', {
      amount: actual.amount,
      paid: paidBy(runs),
      rate: { amount: rate, currency: book.currency },
      share: sharePercent(actual),
      total: sumOf(minor, book),
    }),
    inputs: [
      input('input-amount', actual.amount, actual.resource),
      input('input-minutes', minutes, 'min'),
      input('input-minutes-with-factors', weighted.toFixed(), 'min'),
      input('input-rate', rate, `${book.currency}/h`),
    ],
    source: rule.source ?? book.source,
    basis: 'recorded',
    ...claimOf(actual),
  };
}
