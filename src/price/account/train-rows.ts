import { Big } from 'big.js';
import { clockWords } from '../../calendar/clock-words.js';
import { minutesBetween } from '../../calendar/index.js';
import type { Train } from '../../model/index.js';
import type { DelayByTrain } from '../../model/price-book.js';
import { heldTrains } from '../held-trains.js';
import { decimalText, minorOf, moneyText, rateText } from '../money.js';
import { claimOf, shareOf, shareText } from './claims.js';
import type { AccountInputs, AccountRow, AccountTrain } from './types.js';

/**
 * One row per late or cancelled train, by its recorded time if any, otherwise by the queue behind the actual handback.
 */
export function trainRows(
  inputs: AccountInputs,
  trains: readonly Train[],
  rule: DelayByTrain,
  counted: boolean,
  note: (text: string) => void,
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
      note(
        `${train.id} was cancelled, but the price book says no minutes for a cancelled train: it is priced at nothing.`,
      );
    }
    const minutes = cancelled ? (deemed ?? 0) : late;
    const over = new Big(minutes).times(train.weight).times(rule.rate.amount).times(shareOf(claim));
    const minor = minorOf(over, book, rule.rate.perMinutes);
    const due = clockWords(train.passesAt, window.zone);
    const passed =
      late === null
        ? 'cancelled'
        : actual?.passedAt != null
          ? `passed ${clockWords(actual.passedAt, window.zone)}, ${late} min late`
          : `worked out to be ${late} min late`;
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
      what: `${train.id}, due ${due}, ${passed}`,
      amount,
      counted,
      formula: `${minutes} min${cancelled && late !== null ? ' (more than the cancellation threshold)' : ''} x weight ${train.weight} x ${rateText(rule.rate, book)}${shareText(claim)} = ${moneyText(minor, book)}`,
      inputs: [
        { name: 'minutes', value: String(minutes), unit: 'min' },
        { name: 'weight', value: String(train.weight), unit: '' },
        {
          name: 'rate',
          value: rule.rate.amount,
          unit: `${book.currency} per ${rule.rate.perMinutes} min`,
        },
      ],
      source: rule.source ?? book.source,
      basis,
      ...claimOf(claim),
    });
  }
  if (unrecorded > 0)
    note(
      `${unrecorded} late ${unrecorded === 1 ? 'train has' : 'trains have'} no recorded time and ${unrecorded === 1 ? 'is' : 'are'} worked out from the queue behind the handback.`,
    );
  for (const stray of actuals.keys())
    note(
      `${stray} has a recorded time but is not among the trains due after ${window.id}: it is not priced.`,
    );
  return { rows, trains: found };
}
