import { addMinutes } from '../calendar/index.js';
import { cautions, eachOnce, type Phrase } from '../model/index.js';
import { costModel, type CostInputs, type CostModel } from './cost-model.js';
import { heldTrains } from './held-trains.js';
import { decimalText } from './money.js';
import type { PriceResult, PriceRow } from './types.js';

export interface OverrunInputs extends CostInputs {
  /** Whole minutes from the booked end to handback; 0 for a prompt one. */
  readonly overrunMinutes: number;
}

/**
 * Cost of handing a window back late, by head of cost.
 *
 * Each row is calculated exactly and rounded once, by the book's rule. The total is the sum of the counted rows, to the
 * penny. Rows of zero are kept and say why.
 *
 * @throws {RangeError} When the overrun is negative or not whole minutes, or a sum is too large to be exact.
 */
export function overrunCost(inputs: OverrunInputs): PriceResult {
  return resultAt(costModel(inputs, inputs.overrunMinutes), inputs.overrunMinutes);
}

/** Items without a price at a given overrun. */
export function notPricedAt(model: CostModel, overrunMinutes: number): readonly Phrase[] {
  return eachOnce(
    model.notPriced.filter((item) => item.fromMinute <= overrunMinutes).map((item) => item.phrase),
  );
}

/** Prices one overrun with a cost model. */
export function resultAt(model: CostModel, overrunMinutes: number): PriceResult {
  const { window, book } = model;
  let total = 0;
  let notCounted = 0;
  const rows = model.heads.map((head): PriceRow => {
    const minor = head.minorAt(overrunMinutes);
    const counted = model.counts(head.head);
    if (counted) total += minor;
    else notCounted += minor;
    return {
      head: head.head,
      code: head.code,
      title: head.title,
      amount: decimalText(minor, book),
      counted,
      ...head.explainAt(overrunMinutes),
      source: head.source,
    };
  });
  const handbackAt = addMinutes(window.end, overrunMinutes);
  return {
    window: window.id,
    overrunMinutes,
    handbackAt,
    currency: book.currency,
    rounding: book.rounding,
    basis: book.basis,
    rows,
    total: decimalText(total, book),
    notCounted: decimalText(notCounted, book),
    trains: book.delay?.by === 'train' ? heldTrains(model.trains, handbackAt, book.delay) : [],
    onSite: model.onSite,
    notes: model.notes,
    notPriced: notPricedAt(model, overrunMinutes),
    cautions,
  };
}
