import { Big } from 'big.js';
import { addMinutes } from '../../calendar/index.js';
import type { PriceBook } from '../../model/price-book.js';
import { heldTrains } from '../held-trains.js';
import { minorOf, moneyText, rateText } from '../money.js';
import { input, type CostHead, type HeadContext } from './head.js';

/**
 * A speed restriction after handback: minutes lost per train x trains until it is lifted.
 *
 * Trains due from the booked end until it is lifted run under it, the held ones too. Cancelled ones are left out only
 * where cancelled trains free their path.
 */
export function restrictionHead(
  context: HeadContext,
  rule: NonNullable<PriceBook['restriction']>,
): CostHead {
  const { book, trains, handback } = context;
  const delay = book.delay?.by === 'train' ? book.delay : undefined;
  const rate = rule.rate ?? delay?.rate;
  if (!rate) throw new RangeError('a speed restriction needs a rate');
  const applies = (overrun: number): boolean => overrun > rule.afterMinutes;
  // Weights added up from the first train on: a curve asks for a sum at every minute.
  const sums = [new Big(0)];
  for (const train of trains) sums.push(sums.at(-1)!.plus(train.weight));
  const running = (overrun: number): { trains: number; weight: Big } => {
    if (rule.trains !== undefined) return { trains: rule.trains, weight: new Big(rule.trains) };
    const until = addMinutes(handback(overrun), rule.liftedAfterMinutes);
    const later = trains.findIndex((train) => train.passesAt >= until);
    const due = later < 0 ? trains.length : later;
    if (delay?.cancelledTrains !== 'free-path') return { trains: due, weight: sums[due]! };
    const gone = heldTrains(trains, handback(overrun), delay).filter(
      (one) => one.cancelled && one.dueAt < until,
    );
    return {
      trains: due - gone.length,
      weight: gone.reduce((sum, one) => sum.minus(one.weight), sums[due]!),
    };
  };
  const minorAt = (overrun: number): number =>
    applies(overrun)
      ? minorOf(
          running(overrun).weight.times(rule.minutesLostPerTrain).times(rate.amount),
          book,
          rate.perMinutes,
        )
      : 0;
  const last = trains.at(-1)?.passesAt;
  if (
    rule.trains === undefined &&
    (last === undefined || last < addMinutes(handback(context.maxMinutes), rule.liftedAfterMinutes))
  )
    context.note(
      'The speed restriction may last beyond the last train listed: the trains after it are not priced. Give the number of trains in the price book.',
    );
  return {
    head: 'restriction',
    code: 'restriction',
    title: 'Speed restriction after handback',
    source: rule.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const under = running(overrun);
      const weight = under.weight.eq(under.trains)
        ? ''
        : `, weights adding to ${under.weight.toFixed()}`;
      return {
        formula: applies(overrun)
          ? `${under.trains} trains until it is lifted${weight} x ${rule.minutesLostPerTrain} min x ${rateText(rate, book)} = ${moneyText(minorAt(overrun), book)}`
          : `no restriction: ${overrun} min is not more than ${rule.afterMinutes} min`,
        inputs: [
          input('trains until lifted', under.trains, 'trains'),
          input('sum of weights', under.weight.toFixed()),
          input('minutes lost', rule.minutesLostPerTrain, 'min/train'),
          input('lifted after', rule.liftedAfterMinutes, 'min from handback'),
          input('rate', rate.amount, `${book.currency} per ${rate.perMinutes} min`),
        ],
      };
    },
    stepsTo: (max) =>
      rule.afterMinutes < max
        ? [
            {
              atMinute: rule.afterMinutes + 1,
              kind: 'threshold',
              name: 'speed restriction after handback',
            },
          ]
        : [],
  };
}
