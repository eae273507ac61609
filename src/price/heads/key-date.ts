import { isoText, localText, localTimeOf, type Instant } from '../../calendar/index.js';
import type { KeyDatePrice } from '../../model/price-book.js';
import {
  daysLate,
  endAfter,
  keyDateCost,
  type KeyDateCost,
  type KeyDateState,
} from '../key-dates.js';
import { moneyText } from '../money.js';
import type { CostHead, HeadContext, HeadStep } from './head.js';
import { sayPrice } from '../price-sentences.js';

/** A key date with a forecast and a price. */
export interface PricedKeyDate {
  readonly date: KeyDateState & { readonly forecast: number };
  readonly price: KeyDatePrice;
}

/** `2027-05-13 06:01+01:00`. */
const words = (at: Instant, zone: string): string =>
  `${localText(localTimeOf(at, zone))}${isoText(at, zone).slice(-6)}`;

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
    title: sayPrice('key-date-planned', { name: price.name, package: date.package }),
    source: price.source ?? book.source,
    minorAt: () => cost.minor,
    explainAt: () => ({
      formula: `planned to end ${words(date.forecast, window.zone)}, due ${words(date.due, window.zone)}: ${cost.formula}`,
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
  const name = `${price.name}: ${date.package}`;
  return {
    head: 'key-dates',
    code: `key-date-${codeOf(item, context)}`,
    title: { text: name },
    source: price.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const cost = costAt(overrun);
      const end = words(endAfter(date.forecast, window.end, overrun), window.zone);
      const less =
        planned > 0
          ? `; less ${moneyText(planned, book)} that the plan alone costs = ${moneyText(cost.minor - planned, book)}`
          : '';
      return {
        formula: `ends ${end}, due ${words(date.due, window.zone)}: ${cost.formula}${less}`,
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
        if (now > before && jumps)
          steps.push({ atMinute: overrun, kind: 'threshold', name: { text: name } });
        before = now;
      }
      return steps;
    },
  };
}
