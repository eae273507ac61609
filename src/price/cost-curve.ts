import { cautions } from '../model/index.js';
import { costModel, type CostInputs, type CostModel } from './cost-model.js';
import { decimalText } from './money.js';
import { notPricedAt } from './overrun-cost.js';
import type { CostCurve, HeadCurve } from './types.js';

/**
 * The exact cost at every whole minute of overrun from 0 to `maxMinutes`, and where and why it steps.
 *
 * Each figure equals `overrunCost` at that minute. The cost falls as the overrun grows only where the book lets
 * cancelled trains free their path; those minutes are in `falls`. O(minutes x trains held).
 *
 * @throws {RangeError} As `overrunCost`.
 */
export function costCurve(inputs: CostInputs, maxMinutes: number): CostCurve {
  return curveOf(costModel(inputs, maxMinutes));
}

/** The cost of every minute of a model. */
export function curveOf(model: CostModel): CostCurve {
  const { book, maxMinutes } = model;
  const minutes = Array.from({ length: maxMinutes + 1 }, (_, m) => m);
  const heads = model.heads.map((head): HeadCurve => ({
    head: head.head,
    code: head.code,
    title: head.title,
    counted: model.counts(head.head),
    source: head.source,
    minor: minutes.map((m) => head.minorAt(m)),
  }));
  const counted = heads.filter((head) => head.counted);
  const minor = minutes.map((m) => counted.reduce((sum, head) => sum + head.minor[m]!, 0));
  const rise = (m: number): number => minor[m]! - minor[m - 1]!;
  const steps = model.heads
    .flatMap((head) =>
      head.stepsTo(maxMinutes).map((step) => ({
        atMinute: step.atMinute,
        kind: step.kind,
        name: step.name,
        head: head.head,
        code: head.code,
        counted: model.counts(head.head),
        rise: decimalText(rise(step.atMinute), book),
      })),
    )
    .sort((a, b) => a.atMinute - b.atMinute);
  return {
    window: model.window.id,
    currency: book.currency,
    decimals: book.decimals,
    rounding: book.rounding,
    maxMinutes,
    minor,
    amounts: minor.map((sum) => decimalText(sum, book)),
    heads,
    steps,
    falls: minutes
      .filter((m) => m > 0 && rise(m) < 0)
      .map((m) => ({ atMinute: m, by: decimalText(-rise(m), book) })),
    notes: model.notes,
    notPriced: notPricedAt(model, maxMinutes),
    cautions,
  };
}
