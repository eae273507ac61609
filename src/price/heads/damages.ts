import { Big } from 'big.js';
import type { PriceBook } from '../../model/price-book.js';
import { minorOf } from '../money.js';
import { input, type CostHead, type HeadContext, type HeadStep } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

/** Delay damages by contract: rate x started blocks of minutes after the grace period, up to the cap. */
export function damagesHead(
  context: HeadContext,
  rule: NonNullable<PriceBook['damages']>,
): CostHead {
  const { book } = context;
  const cap = rule.cap === undefined ? Infinity : minorOf(new Big(rule.cap), book);
  const charged = (overrun: number): number =>
    Math.ceil(Math.max(0, overrun - rule.afterMinutes) / rule.blockMinutes) * rule.blockMinutes;
  const uncapped = (overrun: number): number =>
    minorOf(new Big(rule.rate.amount).times(charged(overrun)), book, rule.rate.perMinutes);
  const minorAt = (overrun: number): number => Math.min(cap, uncapped(overrun));
  return {
    head: 'damages',
    code: 'damages',
    title: sayPrice('delay-damages'),
    source: rule.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const full = uncapped(overrun);
      return {
        formula: sayPrice('damages-sum', {
          minutes: charged(overrun),
          rate: { ...rule.rate, currency: book.currency },
          full: sumOf(full, book),
          cap: full > cap ? sumOf(cap, book) : null,
        }),
        inputs: [
          input('input-minutes-charged', charged(overrun), 'min'),
          input('input-grace', rule.afterMinutes, 'min'),
          input('input-blocks', rule.blockMinutes, 'min'),
          input(
            'input-rate',
            rule.rate.amount,
            sayPrice('unit-money-per', { currency: book.currency, minutes: rule.rate.perMinutes }),
          ),
          ...(rule.cap === undefined ? [] : [input('input-cap', rule.cap, book.currency)]),
        ],
      };
    },
    stepsTo(max) {
      const steps: HeadStep[] = [];
      if (rule.afterMinutes < max)
        steps.push({
          atMinute: rule.afterMinutes + 1,
          kind: 'threshold',
          name: sayPrice('damages-begin'),
        });
      let reached = 1;
      while (reached <= max && uncapped(reached) < cap) reached += 1;
      if (reached <= max)
        steps.push({ atMinute: reached, kind: 'cap', name: sayPrice('damages-capped') });
      return steps;
    },
  };
}
