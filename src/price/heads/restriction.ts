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
  const running = (overrun: number): { trains: number; weight: Big } => {
    if (rule.trains !== undefined) return { trains: rule.trains, weight: new Big(rule.trains) };
    const until = addMinutes(handback(overrun), rule.liftedAfterMinutes);
    const gone = new Set(
      delay?.cancelledTrains === 'free-path'
        ? heldTrains(trains, handback(overrun), delay)
            .filter((one) => one.cancelled)
            .map((one) => one.train)
        : [],
    );
    const under = trains.filter((train) => train.passesAt < until && !gone.has(train.id));
    return {
      trains: under.length,
      weight: under.reduce((sum, train) => sum.plus(train.weight), new Big(0)),
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
