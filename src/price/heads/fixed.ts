import type { LengthThreshold, PriceBook } from '../../model/price-book.js';
import { measureSpan } from '../measure-span.js';
import { minorOf, parseMoney } from '../money.js';
import { Big } from 'big.js';
import { firstOver } from './first-over.js';
import { sayPrice, sumOf } from '../say-price.js';
import { input, type CostHead, type HeadContext } from './head.js';

/** A fixed charge, made once the overrun exceeds its threshold. */
export function fixedHead(context: HeadContext, charge: PriceBook['fixed'][number]): CostHead {
  const { book } = context;
  const sum = minorOf(new Big(charge.amount), book);
  const due = (overrun: number): boolean => overrun > charge.afterMinutes;
  return {
    head: 'fixed',
    code: charge.code,
    title: charge.name,
    source: charge.source ?? book.source,
    minorAt: (overrun) => (due(overrun) ? sum : 0),
    explainAt: (overrun) => ({
      formula: due(overrun)
        ? sayPrice('charge-due', {
            minutes: overrun,
            after: charge.afterMinutes,
            charge: sumOf(sum, book),
          })
        : sayPrice('charge-not-due', { minutes: overrun, after: charge.afterMinutes }),
      inputs: [
        input('input-threshold', charge.afterMinutes, 'min'),
        input('input-charge', charge.amount, book.currency),
      ],
    }),
    stepsTo: (max) =>
      charge.afterMinutes < max
        ? [{ atMinute: charge.afterMinutes + 1, kind: 'threshold', name: charge.name }]
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
    title: threshold.name,
    source: threshold.source ?? book.source,
    minorAt: (overrun) => (overrun >= first ? sum : 0),
    explainAt(overrun) {
      const minutes = counted(overrun);
      const hours = new Big(minutes).div(60).round(2).toString();
      const limit = threshold.moreThanHours;
      return {
        formula: already
          ? sayPrice('length-booked', { limit })
          : overrun >= first
            ? sayPrice('length-due', { hours, limit, charge: sumOf(sum, book) })
            : sayPrice('length-not-due', { hours, limit }),
        inputs: [
          input('input-counted', minutes, 'min'),
          input('input-threshold', threshold.moreThanHours, 'h'),
          input(
            'input-holiday-hours',
            sayPrice(
              threshold.publicHolidays === 'counted' ? 'holidays-counted' : 'holidays-not-counted',
            ),
          ),
          input('input-charge', threshold.amount, book.currency),
        ],
      };
    },
    stepsTo: (max) =>
      first <= max ? [{ atMinute: first, kind: 'threshold', name: threshold.name }] : [],
  };
}
