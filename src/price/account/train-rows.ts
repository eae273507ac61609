import { Big } from 'big.js';
import { minutesBetween } from '../../calendar/index.js';
import type { Phrase, Train } from '../../model/index.js';
import type { DelayByTrain } from '../../model/price-book.js';
import { heldTrains } from '../held-trains.js';
import { input } from '../heads/head.js';
import { decimalText, minorOf } from '../money.js';
import { sayPrice, sumOf } from '../say-price.js';
import { claimOf, shareOf, sharePercent } from './claims.js';
import type { AccountInputs, AccountRow, AccountTrain } from './types.js';

/**
 * One row per late or cancelled train, by its recorded time if any, otherwise by the queue behind the actual handback.
 */
export function trainRows(
  inputs: AccountInputs,
  trains: readonly Train[],
  rule: DelayByTrain,
  counted: boolean,
  note: (text: Phrase) => void,
): { readonly rows: readonly AccountRow[]; readonly trains: readonly AccountTrain[] } {
  const { prices: book, window } = inputs;
  const actuals = new Map((inputs.trainActuals ?? []).map((actual) => [actual.train, actual]));
  const queued = new Map(
    heldTrains(trains, Math.max(window.end, inputs.actualHandback), rule).map((train) => [
      train.train,
      train,
    ]),
  );
  const deemed = rule.deemedMinutes ?? rule.cancelAfterMinutes;
  const rows: AccountRow[] = [];
  const found: AccountTrain[] = [];
  let unrecorded = 0;
  for (const train of trains) {
    const actual = actuals.get(train.id);
    const claim = actual ?? inputs.claims?.[`train-${train.id}`];
    actuals.delete(train.id);
    const guess = queued.get(train.id);
    const late = actual
      ? actual.passedAt === null
        ? null
        : Math.max(0, minutesBetween(train.passesAt, actual.passedAt))
      : (guess?.minutesLate ?? 0);
    if (late === 0) continue;
    if (!actual) unrecorded += 1;
    const cancelled =
      late === null || (rule.cancelAfterMinutes !== undefined && late > rule.cancelAfterMinutes);
    if (late === null && deemed === undefined) {
      note(sayPrice('cancelled-without-minutes', { train: train.id }));
    }
    const minutes = cancelled ? (deemed ?? 0) : late;
    const over = new Big(minutes).times(train.weight).times(rule.rate.amount).times(shareOf(claim));
    const minor = minorOf(over, book, rule.rate.perMinutes);
    const basis = actual ? 'recorded' : 'worked out';
    const amount = decimalText(minor, book);
    found.push({
      train: train.id,
      dueAt: train.passesAt,
      passedAt: late === null ? null : (actual?.passedAt ?? guess!.leavesAt),
      minutesLate: late,
      weight: train.weight,
      countedMinutes: minutes,
      cancelled,
      basis,
      amount,
    });
    rows.push({
      head: 'operator-delay',
      code: `train-${train.id}`,
      what: sayPrice('account-train', {
        train: train.id,
        due: { at: train.passesAt, zone: window.zone },
        passed: actual?.passedAt == null ? null : { at: actual.passedAt, zone: window.zone },
        late: late ?? 0,
        cancelled: late === null,
      }),
      amount,
      counted,
      formula: sayPrice('train-sum', {
        minutes,
        overThreshold: cancelled && late !== null,
        weight: train.weight,
        rate: { ...rule.rate, currency: book.currency },
        share: sharePercent(claim),
        total: sumOf(minor, book),
      }),
      inputs: [
        input('input-minutes', minutes, 'min'),
        input('input-weight', train.weight),
        input(
          'input-rate',
          rule.rate.amount,
          sayPrice('unit-money-per', {
            currency: book.currency,
            minutes: rule.rate.perMinutes,
          }),
        ),
      ],
      source: rule.source ?? book.source,
      basis,
      ...claimOf(claim),
    });
  }
  if (unrecorded > 0) note(sayPrice('trains-not-recorded', { count: unrecorded }));
  for (const stray of actuals.keys())
    note(sayPrice('train-not-due', { train: stray, window: window.id }));
  return { rows, trains: found };
}
