import { Big } from 'big.js';
import { addMinutes, minutesBetween, type Instant } from '../../calendar/index.js';
import type { PriceBook } from '../../model/price-book.js';
import { heldTrains } from '../held-trains.js';
import { speedText, type SpeedLeft } from '../speed-after.js';
import { minorOf } from '../money.js';
import { input, type CostHead, type HeadContext } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

type Rule = NonNullable<PriceBook['restriction']>;

/** Trains under the restriction, with the sum of their weights. */
interface Running {
  readonly trains: number;
  readonly weight: Big;
}

/**
 * Cost of a speed restriction after handback: minutes lost per train x trains until it is lifted.
 *
 * Trains due from the booked end until it is lifted run under it, held ones too. Cancelled ones are excluded only where
 * cancelled trains free their path. What planned work leaves (`left`) is one row, the same at every overrun; the other
 * row is what an overrun adds.
 */
export function restrictionHeads(
  context: HeadContext,
  rule: Rule,
  left: readonly SpeedLeft[],
): readonly CostHead[] {
  const { book, window, trains, handback } = context;
  const delay = book.delay?.by === 'train' ? book.delay : undefined;
  const rate = rule.rate ?? delay?.rate;
  if (!rate) throw new RangeError('a speed restriction needs a rate');
  const applies = (overrun: number): boolean => overrun > rule.afterMinutes;
  // Prefix sums of the weights, as a curve needs a sum at every minute.
  const sums = [new Big(0)];
  for (const train of trains) sums.push(sums.at(-1)!.plus(train.weight));
  const runningUntil = (until: Instant, overrun: number): Running => {
    if (rule.trains !== undefined) return { trains: rule.trains, weight: new Big(rule.trains) };
    const later = trains.findIndex((train) => train.passesAt >= until);
    const due = later < 0 ? trains.length : later;
    if (delay?.cancelledTrains !== 'free-path') return { trains: due, weight: sums[due]! };
    const gone = heldTrains(trains, handback(overrun), delay).filter(
      (train) => train.cancelled && train.dueAt < until,
    );
    return {
      trains: due - gone.length,
      weight: gone.reduce((sum, train) => sum.minus(train.weight), sums[due]!),
    };
  };
  const costOf = ({ weight }: Running): number =>
    minorOf(weight.times(rule.minutesLostPerTrain).times(rate.amount), book, rate.perMinutes);
  const leftUntil = left.map(
    (speedLeft) => speedLeft.until ?? addMinutes(window.end, rule.liftedAfterMinutes),
  );
  const plannedUntil = Math.max(-Infinity, ...leftUntil);
  const planned = left.length === 0 ? null : runningUntil(plannedUntil, 0);
  const plannedMinor = planned ? costOf(planned) : 0;
  const until = (overrun: number): Instant =>
    Math.max(plannedUntil, addMinutes(handback(overrun), rule.liftedAfterMinutes));
  const minorAt = (overrun: number): number =>
    applies(overrun)
      ? Math.max(0, costOf(runningUntil(until(overrun), overrun)) - plannedMinor)
      : 0;
  reportUnlistedTrains(context, rule, plannedUntil);
  const source = rule.source ?? book.source;
  const underLimit = ({ trains: count, weight }: Running) => ({
    trains: count,
    weight: weight.eq(count) ? null : weight.toFixed(),
    minutes: String(rule.minutesLostPerTrain),
    rate: { ...rate, currency: book.currency },
  });
  const inputs = (under: Running) => [
    input('input-trains-until-lifted', under.trains, sayPrice('unit-trains')),
    input('input-sum-of-weights', under.weight.toFixed()),
    input('input-minutes-lost', rule.minutesLostPerTrain, sayPrice('unit-min-per-train')),
    input('input-lifted-after', rule.liftedAfterMinutes, sayPrice('unit-min-from-handback')),
    input(
      'input-rate',
      rate.amount,
      sayPrice('unit-money-per', { currency: book.currency, minutes: rate.perMinutes }),
    ),
  ];
  const heads: CostHead[] = [];
  if (planned)
    heads.push({
      head: 'restriction',
      code: 'restriction-planned',
      title: sayPrice('restriction-planned'),
      source,
      minorAt: () => plannedMinor,
      explainAt: () => ({
        formula: sayPrice('restriction-left-sum', {
          left: left.map((speedLeft) => ({
            speed: speedText(speedLeft),
            activity: speedLeft.activity,
            until: speedLeft.until === null ? null : { at: speedLeft.until, zone: window.zone },
            liftedBy: speedLeft.liftedBy ?? '',
            liftedAfter: rule.liftedAfterMinutes,
          })),
          under: underLimit(planned),
          total: sumOf(plannedMinor, book),
        }),
        inputs: inputs(planned),
      }),
      stepsTo: () => [],
    });
  heads.push({
    head: 'restriction',
    code: 'restriction',
    title: sayPrice('restriction-after'),
    source,
    minorAt,
    explainAt(overrun) {
      const under = runningUntil(until(overrun), overrun);
      return {
        formula: applies(overrun)
          ? sayPrice('restriction-sum', {
              under: underLimit(under),
              total: sumOf(costOf(under), book),
              less: planned && {
                planned: sumOf(plannedMinor, book),
                rest: sumOf(minorAt(overrun), book),
              },
            })
          : sayPrice('restriction-not-due', { minutes: overrun, after: rule.afterMinutes }),
        inputs: inputs(under),
      };
    },
    stepsTo: (max) =>
      rule.afterMinutes < max
        ? [
            {
              atMinute: rule.afterMinutes + 1,
              kind: 'threshold',
              name: sayPrice('restriction-begins'),
            },
          ]
        : [],
  });
  return heads;
}

/** Reports when the list of trains ends before the restriction is lifted. */
function reportUnlistedTrains(context: HeadContext, rule: Rule, plannedUntil: Instant): void {
  const { trains, window, maxMinutes } = context;
  if (rule.trains !== undefined) return;
  const last = trains.at(-1)?.passesAt ?? window.end;
  const text = sayPrice('restriction-beyond-trains');
  if (last < plannedUntil) context.notPriced(text);
  else {
    const reaches = minutesBetween(window.end, last) - rule.liftedAfterMinutes + 1;
    const from = Math.max(rule.afterMinutes + 1, trains.length === 0 ? 0 : reaches);
    if (from <= maxMinutes) context.notPriced(text, from);
  }
}
