import { minutesBetween } from '../../calendar/index.js';
import { cautions } from '../../model/index.js';
import { costModel } from '../cost-model.js';
import { input } from '../heads/head.js';
import { decimalText, parseMoney } from '../money.js';
import { resultAt } from '../overrun-cost.js';
import { sayPrice } from '../say-price.js';
import { accountTotals } from './totals.js';
import { claimOf, ourShare, sharePercent } from './claims.js';
import { standingRow } from './standing-row.js';
import { trainRows } from './train-rows.js';
import type { Account, AccountInputs, AccountRow } from './types.js';

/**
 * The account after a late handback: each cost in its own row, with how it was calculated, who claims it and the
 * evidence.
 *
 * Records replace calculated values: a train's recorded time its queued time, a resource's time sheet its standing row,
 * an invoice the row of the same code. Each row is rounded once, so the total may differ by pence from a forecast that
 * rounds each head as a whole.
 *
 * @throws {RangeError} When the handback is not whole minutes from the booked end, or an amount is not a number.
 */
export function account(inputs: AccountInputs): Account {
  const { window, prices: book, actualHandback } = inputs;
  const overrunMinutes = Math.max(0, minutesBetween(window.end, actualHandback));
  const model = costModel(inputs, overrunMinutes);
  // Recorded lateness already includes time lost to a speed restriction, so these trains are not charged for it twice.
  const recorded = new Set((inputs.trainActuals ?? []).map((actual) => actual.train));
  const others = inputs.trains.filter((train) => !recorded.has(train.id));
  const priced = resultAt(costModel({ ...inputs, trains: others }, overrunMinutes), overrunMinutes);
  const rows: AccountRow[] = [];
  const notes = [...model.notes];
  if (recorded.size > 0 && book.restriction?.trains !== undefined)
    notes.push(sayPrice('restriction-claimed-twice'));
  const delayRule = book.delay?.by === 'train' ? book.delay : undefined;
  const delayed =
    delayRule &&
    trainRows(inputs, model.trains, delayRule, model.counts('operator-delay'), (note) =>
      notes.push(note),
    );
  if (delayed) rows.push(...delayed.rows);
  const standing = inputs.standingActuals ?? [];
  for (const actual of standing) rows.push(standingRow(inputs, actual, model.counts('standing')));
  const charges = inputs.chargeActuals ?? [];
  for (const charge of charges) {
    const minor = ourShare(parseMoney(charge.amount, book), charge, book);
    rows.push({
      head: charge.head,
      code: charge.code,
      what: charge.title,
      amount: decimalText(minor, book),
      counted: model.counts(charge.head),
      formula: sayPrice('recorded-sum', {
        sum: { amount: charge.amount, currency: book.currency },
        share: sharePercent(charge),
      }),
      inputs: [input('input-recorded', charge.amount, book.currency)],
      source: charge.source ?? charge.evidence ?? sayPrice('as-recorded'),
      basis: 'recorded',
      ...claimOf(charge),
    });
  }
  const replaced = new Set([
    ...(delayRule ? ['operator-delay'] : []),
    ...standing.map((actual) => `standing-${actual.resource}`),
    ...charges.map((charge) => charge.code),
  ]);
  for (const row of priced.rows) {
    if (replaced.has(row.code)) continue;
    const claim = inputs.claims?.[row.code];
    const share = sharePercent(claim);
    rows.push({
      head: row.head,
      code: row.code,
      what: row.title,
      amount: decimalText(ourShare(parseMoney(row.amount, book), claim, book), book),
      counted: row.counted,
      formula: share === null ? row.formula : sayPrice('share-of', { formula: row.formula, share }),
      inputs: row.inputs,
      source: row.source,
      basis: 'worked out',
      ...claimOf(claim),
    });
  }
  return {
    ...accountTotals(rows, book, inputs.forecast),
    window: window.id,
    currency: book.currency,
    bookedEnd: window.end,
    actualHandback,
    overrunMinutes,
    rows,
    notes,
    trains: delayed?.trains ?? [],
    onSite: priced.onSite,
    notPriced: priced.notPriced,
    cautions,
  };
}
