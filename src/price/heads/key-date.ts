import { isoText } from '../../calendar/index.js';
import type { KeyDatePrice } from '../../model/price-book.js';
import {
  daysLate,
  endAfter,
  keyDateCost,
  givenName,
  keyDateTitle,
  type KeyDateCost,
  type KeyDateState,
} from '../key-dates.js';
import type { CostHead, HeadContext, HeadStep } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

/** A key date with a forecast and a price. */
export interface PricedKeyDate {
  readonly date: KeyDateState & { readonly forecast: number };
  readonly price: KeyDatePrice;
}

const codeOf = ({ date }: PricedKeyDate, { window }: HeadContext): string =>
  `${date.package}-${isoText(date.due, window.zone).slice(0, 10)}`;

/** The cost of a key date that the plan itself misses: the same at every overrun. */
export function plannedKeyDateHead(context: HeadContext, item: PricedKeyDate): CostHead {
  const { book, window } = context;
  const { date, price } = item;
  const cost = keyDateCost(price, date.due, date.forecast, window.zone, book);
  return {
    head: 'key-dates',
    code: `key-date-planned-${codeOf(item, context)}`,
    title: sayPrice('key-date-planned', { name: givenName(price), package: date.package }),
    source: price.source ?? book.source,
    minorAt: () => cost.minor,
    explainAt: () => ({
      formula: sayPrice('key-date-as-planned', {
        ends: { at: date.forecast, zone: window.zone },
        due: { at: date.due, zone: window.zone },
        cost: cost.formula,
      }),
      inputs: cost.inputs,
    }),
    stepsTo: () => [],
  };
}

/**
 * What an overrun adds to the cost of a key date whose last work is in the window. That work is taken to finish at
 * handback; the cost of the plan itself is not counted again.
 */
export function keyDateHead(context: HeadContext, item: PricedKeyDate): CostHead {
  const { book, window } = context;
  const { date, price } = item;
  const costAt = (overrun: number): KeyDateCost =>
    keyDateCost(price, date.due, endAfter(date.forecast, window.end, overrun), window.zone, book);
  const planned = costAt(0).minor;
  // A curve prices every minute, but the cost changes only when a day begins.
  const known = new Map<number, number>();
  const minorAt = (overrun: number): number => {
    const end = endAfter(date.forecast, window.end, overrun);
    if (end <= date.due) return 0;
    if (price.partDay !== 'whole') return costAt(overrun).minor - planned;
    const days = daysLate(date.due, end, window.zone);
    let minor = known.get(days);
    if (minor === undefined) known.set(days, (minor = costAt(overrun).minor - planned));
    return minor;
  };
  const name = keyDateTitle(price, date.package);
  return {
    head: 'key-dates',
    code: `key-date-${codeOf(item, context)}`,
    title: name,
    source: price.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const cost = costAt(overrun);
      return {
        formula: sayPrice('key-date-by-overrun', {
          ends: { at: endAfter(date.forecast, window.end, overrun), zone: window.zone },
          due: { at: date.due, zone: window.zone },
          cost: cost.formula,
          less:
            planned > 0
              ? { planned: sumOf(planned, book), rest: sumOf(cost.minor - planned, book) }
              : null,
        }),
        inputs: cost.inputs,
      };
    },
    stepsTo(max) {
      const steps: HeadStep[] = [];
      let before = 0;
      for (let overrun = 1; overrun <= max; overrun += 1) {
        const now = minorAt(overrun);
        // Priced in proportion it rises every minute; only its first minute is a step.
        const jumps = price.partDay === 'whole' || before === 0;
        if (now > before && jumps) steps.push({ atMinute: overrun, kind: 'threshold', name });
        before = now;
      }
      return steps;
    },
  };
}
