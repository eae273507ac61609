import type { LengthThreshold, PriceBook } from '../../model/price-book.js';
import { measureSpan } from '../measure-span.js';
import { minorOf, moneyText, parseMoney } from '../money.js';
import { Big } from 'big.js';
import { firstOver } from './first-over.js';
import { input, type CostHead, type HeadContext } from './head.js';

/** A fixed charge, made once the overrun exceeds its threshold. */
export function fixedHead(context: HeadContext, charge: PriceBook['fixed'][number]): CostHead {
  const { book } = context;
  const sum = minorOf(new Big(charge.amount), book);
  const due = (overrun: number): boolean => overrun > charge.afterMinutes;
  return {
    head: 'fixed',
    code: charge.code,
    title: { text: charge.name },
    source: charge.source ?? book.source,
    minorAt: (overrun) => (due(overrun) ? sum : 0),
    explainAt: (overrun) => ({
      formula: due(overrun)
        ? `${overrun} min is more than ${charge.afterMinutes} min: ${moneyText(sum, book)}`
        : `${overrun} min is not more than ${charge.afterMinutes} min: nothing`,
      inputs: [
        input('threshold', charge.afterMinutes, 'min'),
        input('charge', charge.amount, book.currency),
      ],
    }),
    stepsTo: (max) =>
      charge.afterMinutes < max
        ? [{ atMinute: charge.afterMinutes + 1, kind: 'threshold', name: { text: charge.name } }]
        : [],
  };
}

/** A charge made once the overrun makes the whole closure longer than a number of hours. */
export function lengthHead(
  context: HeadContext,
  threshold: LengthThreshold & { readonly amount: string },
): CostHead {
  const { book, window, holidays, handback } = context;
  const sum = parseMoney(threshold.amount, book);
  const limit = threshold.moreThanHours * 60;
  const counted = (overrun: number): number =>
    measureSpan({ start: window.start, end: handback(overrun) }, window.zone, threshold, holidays)
      .countedMinutes;
  const already = counted(0) > limit;
  // Counted minutes never fall as the overrun grows, so a binary search finds the first overrun past the limit.
  const first = already ? Infinity : firstOver((m) => counted(m) > limit, context.maxMinutes);
  return {
    head: 'fixed',
    code: threshold.code,
    title: { text: threshold.name },
    source: threshold.source ?? book.source,
    minorAt: (overrun) => (overrun >= first ? sum : 0),
    explainAt(overrun) {
      const minutes = counted(overrun);
      const hours = new Big(minutes).div(60).round(2).toString();
      const what = `${hours} h counted from start to handback`;
      return {
        formula: already
          ? `the booking alone is more than ${threshold.moreThanHours} h: nothing more for the overrun`
          : overrun >= first
            ? `${what} is more than ${threshold.moreThanHours} h: ${moneyText(sum, book)}`
            : `${what} is not more than ${threshold.moreThanHours} h: nothing`,
        inputs: [
          input('counted', minutes, 'min'),
          input('threshold', threshold.moreThanHours, 'h'),
          input('public holiday hours', threshold.publicHolidays),
          input('charge', threshold.amount, book.currency),
        ],
      };
    },
    stepsTo: (max) =>
      first <= max ? [{ atMinute: first, kind: 'threshold', name: { text: threshold.name } }] : [],
  };
}
