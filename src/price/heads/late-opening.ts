import { Big } from 'big.js';
import type { LateOpening } from '../../model/price-book.js';
import { minorOf, parseMoney } from '../money.js';
import { input, type CostHead, type HeadContext, type HeadStep } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

type Band = LateOpening['bands'][number];

/** The intervals of one band that have begun, and the cost of each, exact, as a multiple of 1 / `under`. */
interface Begun {
  readonly band: Band;
  readonly length: number;
  readonly count: number;
  readonly each: Big;
}

/** A charge for each interval begun after the booked end, by how late it begins, up to the cap. */
export function lateOpeningHead(context: HeadContext, charge: LateOpening): CostHead {
  const { book } = context;
  const { bands, rate } = charge;
  // A common divisor (per cent x minutes of the rate) keeps the sum exact until it is rounded once.
  const under = new Big(100).times(rate.perMinutes);
  const each = bands.map((band): Big => {
    const length = band.intervalMinutes ?? charge.intervalMinutes;
    let over = new Big(rate.amount).times(length).times(band.percent);
    if (band.least !== undefined && over.lt(under.times(band.least)))
      over = under.times(band.least);
    if (band.most !== undefined && over.gt(under.times(band.most))) over = under.times(band.most);
    return over;
  });
  const begunAt = (overrun: number): readonly Begun[] =>
    bands
      .map((band, i): Begun => {
        const length = band.intervalMinutes ?? charge.intervalMinutes;
        const until = Math.min(overrun, bands[i + 1]?.afterMinutes ?? Infinity);
        const count = Math.ceil(Math.max(0, until - band.afterMinutes) / length);
        return { band, length, count, each: each[i]! };
      })
      .filter((item) => item.count > 0);
  const cap = charge.cap === undefined ? Infinity : parseMoney(charge.cap, book);
  const uncapped = (overrun: number): number =>
    minorOf(
      begunAt(overrun).reduce((sum, item) => sum.plus(item.each.times(item.count)), new Big(0)),
      book,
      under,
    );
  const minorAt = (overrun: number): number => Math.min(cap, uncapped(overrun));
  return {
    head: 'late-opening',
    code: charge.code,
    title: charge.name,
    source: charge.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const begun = begunAt(overrun);
      const full = uncapped(overrun);
      return {
        formula:
          begun.length === 0
            ? sayPrice('no-interval-begun')
            : sayPrice('late-opening-sum', {
                begun: begun.map((item) => ({
                  count: item.count,
                  minutes: item.length,
                  each: sumOf(minorOf(item.each, book, under), book),
                  bound: boundOf(item),
                })),
                full: sumOf(full, book),
                cap: full > cap ? sumOf(cap, book) : null,
              }),
        inputs: [
          input('input-full-rate', sayPrice('rate', { ...rate, currency: book.currency })),
          ...begun.map((item) =>
            input(
              sayPrice('input-intervals', {
                minutes: item.band.afterMinutes,
                percent: item.band.percent,
              }),
              item.count,
              `x ${item.length} min`,
            ),
          ),
          ...(charge.cap === undefined ? [] : [input('input-cap', charge.cap, book.currency)]),
        ],
      };
    },
    stepsTo(max) {
      const steps: HeadStep[] = bands
        .filter((band) => band.afterMinutes < max)
        .map((band) => ({
          atMinute: band.afterMinutes + 1,
          kind: 'rate-change',
          name: sayPrice('late-opening-band', {
            name: charge.name,
            percent: band.percent,
            minutes: band.intervalMinutes ?? charge.intervalMinutes,
          }),
        }));
      let reached = 1;
      while (reached <= max && uncapped(reached) < cap) reached += 1;
      if (reached <= max)
        steps.push({
          atMinute: reached,
          kind: 'cap',
          name: sayPrice('charge-capped', { name: charge.name }),
        });
      return steps;
    },
  };

  /** The percentage, or the least or most that holds in its place. */
  function boundOf({ band, length }: Begun): 'least' | 'most' | { readonly percent: string } {
    const plain = new Big(rate.amount).times(length).times(band.percent);
    if (band.least !== undefined && plain.lt(under.times(band.least))) return 'least';
    if (band.most !== undefined && plain.gt(under.times(band.most))) return 'most';
    return { percent: band.percent };
  }
}
