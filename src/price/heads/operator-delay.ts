import { Big } from 'big.js';
import type { Phrase } from '../../model/index.js';
import type { DelayByBands, DelayByTrain } from '../../model/price-book.js';
import { heldTrains } from '../held-trains.js';
import { minorOf } from '../money.js';
import type { HeldTrain } from '../types.js';
import { firstOver } from './first-over.js';
import { input, type CostHead, type HeadContext, type HeadStep } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

/** Exact sum of charged minutes x weight. Minutes are summed per weight first, as there are few weights. */
export function weightedMinutes(held: readonly HeldTrain[]): Big {
  const byWeight = new Map<number, number>();
  for (const train of held)
    byWeight.set(train.weight, (byWeight.get(train.weight) ?? 0) + train.countedMinutes);
  let sum = new Big(0);
  for (const [weight, minutes] of byWeight) sum = sum.plus(new Big(weight).times(minutes));
  return sum;
}

/** Operator delay by train: minutes late x weight x rate; cancelled trains at their deemed minutes. */
export function delayByTrain(context: HeadContext, rule: DelayByTrain): CostHead {
  const { book, trains, handback } = context;
  const heldAt = (overrun: number): readonly HeldTrain[] =>
    heldTrains(trains, handback(overrun), rule);
  const minorAt = (overrun: number): number =>
    minorOf(weightedMinutes(heldAt(overrun)).times(rule.rate.amount), book, rule.rate.perMinutes);
  reportUnlistedTrains(context, heldAt);
  return {
    head: 'operator-delay',
    code: 'operator-delay',
    title: sayPrice('delay-to-trains'),
    source: rule.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const held = heldAt(overrun);
      const cancelled = held.filter((train) => train.cancelled);
      const weighted = weightedMinutes(held).toFixed();
      return {
        formula:
          held.length === 0
            ? sayPrice('no-train-held')
            : sayPrice('trains-late-sum', {
                trains: held.length,
                cancelled: cancelled.length,
                deemed: cancelled[0]?.countedMinutes ?? 0,
                weighted,
                rate: { ...rule.rate, currency: book.currency },
                total: sumOf(minorAt(overrun), book),
              }),
        inputs: [
          input('input-trains-late', held.length - cancelled.length, sayPrice('unit-trains')),
          input('input-trains-cancelled', cancelled.length, sayPrice('unit-trains')),
          input('input-weighted-minutes', weighted, 'min'),
          input('input-rate', rule.rate.amount, perUnit(book.currency, rule.rate.perMinutes)),
          input('input-headway', rule.headwayMinutes, 'min'),
        ],
      };
    },
    stepsTo: (max) => trainSteps(heldAt, max),
  };
}

/** Reports that no trains are listed, or from which overrun trains after the end of the list would be held. */
function reportUnlistedTrains(
  { trains, window, maxMinutes, notPriced }: HeadContext,
  heldAt: (overrun: number) => readonly HeldTrain[],
): void {
  const last = trains.at(-1);
  if (!last) {
    notPriced(sayPrice('no-train-listed', { window: window.id }));
    return;
  }
  const held = (overrun: number): boolean => heldAt(overrun).at(-1)?.train === last.id;
  const from = firstOver(held, maxMinutes);
  if (from <= maxMinutes)
    notPriced(
      sayPrice('train-list-ends', {
        passes: { at: last.passesAt, zone: window.zone },
        train: last.id,
        minutes: from,
      }),
      from,
    );
}

const perUnit = (currency: string, minutes: number): Phrase =>
  minutes === 1 ? `${currency}/min` : sayPrice('unit-money-per', { currency, minutes });

/** A step where a train is first late, and another where it is first cancelled. */
function trainSteps(
  heldAt: (overrun: number) => readonly HeldTrain[],
  max: number,
): readonly HeadStep[] {
  const steps: HeadStep[] = [];
  const late = new Set<string>();
  const gone = new Set<string>();
  for (let m = 1; m <= max; m += 1) {
    for (const train of heldAt(m)) {
      if (!late.has(train.train)) {
        late.add(train.train);
        steps.push({
          atMinute: m,
          kind: 'train-held',
          name: sayPrice('train-held', { train: train.train }),
        });
      }
      if (train.cancelled && !gone.has(train.train)) {
        gone.add(train.train);
        steps.push({
          atMinute: m,
          kind: 'train-cancelled',
          name: sayPrice('train-cancelled', { train: train.train }),
        });
      }
    }
  }
  return steps;
}

/** Operator delay by bands: each minute of the overrun at the rate of its band. */
export function delayByBands(context: HeadContext, rule: DelayByBands): CostHead {
  const { book } = context;
  const parts = (overrun: number) =>
    rule.bands
      .map((band, i) => {
        const end = Math.min(overrun, rule.bands[i + 1]?.afterMinutes ?? Number.POSITIVE_INFINITY);
        return { band, minutes: Math.max(0, end - band.afterMinutes) };
      })
      .filter((part) => part.minutes > 0);
  // One common denominator, so that the row is rounded once.
  const under = rule.bands.reduce((product, b) => product.times(b.rate.perMinutes), new Big(1));
  const minorAt = (overrun: number): number => {
    let over = new Big(0);
    for (const { band, minutes } of parts(overrun)) {
      // The product of the other bands' minutes is a whole number, so this division is exact.
      const others = rule.bands
        .filter((other) => other !== band)
        .reduce((product, b) => product.times(b.rate.perMinutes), new Big(1));
      over = over.plus(new Big(band.rate.amount).times(minutes).times(others));
    }
    return minorOf(over, book, under);
  };
  return {
    head: 'operator-delay',
    code: 'operator-delay',
    title: sayPrice('delay-by-minute'),
    source: rule.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const used = parts(overrun);
      return {
        formula:
          used.length === 0
            ? sayPrice('no-minute-in-band')
            : sayPrice('bands-sum', {
                parts: used.map(({ band, minutes }) => ({
                  minutes,
                  rate: { ...band.rate, currency: book.currency },
                })),
                total: sumOf(minorAt(overrun), book),
              }),
        inputs: used.flatMap((p) => [
          input(
            sayPrice('input-minutes-after', { minutes: p.band.afterMinutes }),
            p.minutes,
            'min',
          ),
          input(
            sayPrice('input-rate-after', { minutes: p.band.afterMinutes }),
            p.band.rate.amount,
            perUnit(book.currency, p.band.rate.perMinutes),
          ),
        ]),
      };
    },
    stepsTo: (max) =>
      rule.bands
        .filter((band) => band.afterMinutes < max)
        .map((band) => ({
          atMinute: band.afterMinutes + 1,
          kind: 'rate-change' as const,
          name: sayPrice('rate-after', {
            rate: { ...band.rate, currency: book.currency },
            minutes: band.afterMinutes,
          }),
        })),
  };
}
