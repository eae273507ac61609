import { Big } from 'big.js';
import { clockWords } from '../../calendar/clock-words.js';
import { addMinutes, minutesBetween, type Instant } from '../../calendar/index.js';
import type { PriceBook } from '../../model/price-book.js';
import { heldTrains } from '../held-trains.js';
import type { SpeedLeft } from '../speed-after.js';
import { minorOf, moneyText, rateText } from '../money.js';
import { input, type CostHead, type HeadContext } from './head.js';
import { sayPrice } from '../price-sentences.js';

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
  const words = ({ trains: count, weight }: Running): string =>
    `${count} trains until it is lifted${weight.eq(count) ? '' : `, weights adding to ${weight.toFixed()}`} x ${rule.minutesLostPerTrain} min x ${rateText(rate, book)}`;
  const inputs = (under: Running) => [
    input('trains until lifted', under.trains, 'trains'),
    input('sum of weights', under.weight.toFixed()),
    input('minutes lost', rule.minutesLostPerTrain, 'min/train'),
    input('lifted after', rule.liftedAfterMinutes, 'min from handback'),
    input('rate', rate.amount, `${book.currency} per ${rate.perMinutes} min`),
  ];
  const heads: CostHead[] = [];
  if (planned)
    heads.push({
      head: 'restriction',
      code: 'restriction-planned',
      title: sayPrice('restriction-planned', {}),
      source,
      minorAt: () => plannedMinor,
      explainAt: () => ({
        formula: `${left.map((speedLeft) => speedLeftText(speedLeft, rule, window.zone)).join('; ')}: ${words(planned)} = ${moneyText(plannedMinor, book)}`,
        inputs: inputs(planned),
      }),
      stepsTo: () => [],
    });
  heads.push({
    head: 'restriction',
    code: 'restriction',
    title: sayPrice('restriction-after', {}),
    source,
    minorAt,
    explainAt(overrun) {
      const under = runningUntil(until(overrun), overrun);
      const less =
        planned && applies(overrun)
          ? `; less ${moneyText(plannedMinor, book)} that the plan alone costs = ${moneyText(minorAt(overrun), book)}`
          : '';
      return {
        formula: applies(overrun)
          ? `${words(under)} = ${moneyText(costOf(under), book)}${less}`
          : `no restriction by the overrun: ${overrun} min is not more than ${rule.afterMinutes} min`,
        inputs: inputs(under),
      };
    },
    stepsTo: (max) =>
      rule.afterMinutes < max
        ? [
            {
              atMinute: rule.afterMinutes + 1,
              kind: 'threshold',
              name: sayPrice('restriction-begins', {}),
            },
          ]
        : [],
  });
  return heads;
}

function speedLeftText(speedLeft: SpeedLeft, rule: Rule, zone: string): string {
  const limit = `${speedLeft.limit.value} ${speedLeft.limit.unit} after ${speedLeft.activity}`;
  return speedLeft.until === null
    ? `${limit}, which no later work is planned to lift: taken as lifted ${rule.liftedAfterMinutes} min after the booked end`
    : `${limit} until ${speedLeft.liftedBy ?? ''} ends at ${clockWords(speedLeft.until, zone)}`;
}

/** Reports when the list of trains ends before the restriction is lifted. */
function reportUnlistedTrains(context: HeadContext, rule: Rule, plannedUntil: Instant): void {
  const { trains, window, maxMinutes } = context;
  if (rule.trains !== undefined) return;
  const last = trains.at(-1)?.passesAt ?? window.end;
  const text =
    'The speed restriction may last beyond the last train listed: the trains after it are not priced. Give the number of trains in the price book.';
  if (last < plannedUntil) context.notPriced(text);
  else {
    const reaches = minutesBetween(window.end, last) - rule.liftedAfterMinutes + 1;
    const from = Math.max(rule.afterMinutes + 1, trains.length === 0 ? 0 : reaches);
    if (from <= maxMinutes) context.notPriced(text, from);
  }
}
