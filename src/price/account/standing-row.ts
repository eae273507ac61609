import { Big } from 'big.js';
import { clockWords } from '../../calendar/clock-words.js';
import { interval, lengthMinutes } from '../../calendar/index.js';
import { plainStanding } from '../heads/plain-standing.js';
import { decimalText, minorOf, moneyText } from '../money.js';
import { factorRuns } from '../pay-factors.js';
import { claimOf, shareOf, shareText } from './claims.js';
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
  const words = runs.map((run) => `${run.toMinute - run.fromMinute} min at ${run.factor}`);
  return {
    head: 'standing',
    code: `standing-${actual.resource}`,
    what: `${actual.amount} x ${actual.resource}, ${clockWords(actual.start, window.zone)} to ${clockWords(actual.end, window.zone)}`,
    amount: decimalText(minor, book),
    counted,
    formula: `${actual.amount} x (${words.join(' + ')}) x ${book.currency} ${rate} an hour${shareText(actual)} = ${moneyText(minor, book)}`,
    inputs: [
      { name: 'amount', value: String(actual.amount), unit: actual.resource },
      { name: 'minutes', value: String(minutes), unit: 'min' },
      { name: 'minutes with factors', value: weighted.toFixed(), unit: 'min' },
      { name: 'rate', value: rate, unit: `${book.currency}/h` },
    ],
    source: rule.source ?? book.source,
    basis: 'recorded',
    ...claimOf(actual),
  };
}
