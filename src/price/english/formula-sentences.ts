// English for how each amount of money was worked out.
import { clockWords } from '../../calendar/clock-words.js';
import { durationText, isoText, localText, localTimeOf } from '../../calendar/index.js';
import type { Moment, Phrase, SayPhrase } from '../../model/index.js';
import { rateText, sumText, type RateOf, type SumOf } from './money-words.js';

/** What the plan alone costs, and what is left of a sum without it. */
type Less = {
  readonly planned: SumOf;
  readonly rest: SumOf;
};
/** Minutes at a pay factor; `names` say of which times it is, where it is known. */
type Paid = {
  readonly minutes: number;
  readonly factor: string;
  readonly names: readonly string[];
};
/** Trains under a speed restriction. `weight`: null where it is that of as many plain trains. */
type UnderLimit = {
  readonly trains: number;
  readonly weight: string | null;
  readonly minutes: string;
  readonly rate: RateOf;
};
/** A limit left on the line. `until`: null where no work is planned to lift it. */
type LimitLeft = {
  readonly speed: string;
  readonly activity: string;
  readonly until: Moment | null;
  readonly liftedBy: string;
  /** Minutes after the booked end at which it counts as lifted where nothing lifts it. */
  readonly liftedAfter: number;
};
type KeyDateEnd = {
  readonly ends: Moment;
  readonly due: Moment;
  readonly cost: Phrase;
};
type OverLimit = {
  readonly minutes: number;
  readonly after: number;
};
type LengthOver = {
  readonly hours: string;
  readonly limit: number;
};

const clock = ({ at, zone }: Moment): string => clockWords(at, zone);
/** `2027-05-13 06:01+01:00`. */
const stamp = ({ at, zone }: Moment): string =>
  `${localText(localTimeOf(at, zone))}${isoText(at, zone).slice(-6)}`;
const held = (cap: SumOf | null): string =>
  cap === null ? '' : `, held to the cap of ${sumText(cap)}`;
const shared = (share: string | null): string =>
  share === null ? '' : `, of which our share of ${share} %`;
const lessText = (less: Less | null): string =>
  less === null
    ? ''
    : `; less ${sumText(less.planned)} that the plan alone costs = ${sumText(less.rest)}`;
const factorText = ({ minutes, factor }: Paid): string => `${minutes} min at ${factor}`;
const paidText = (paid: Paid): string =>
  paid.names.length === 0 && paid.factor === '1'
    ? `${paid.minutes} min`
    : `${factorText(paid)} (${paid.names.join(', ')})`;
const underText = ({ trains, weight, minutes, rate }: UnderLimit): string =>
  `${trains} trains until it is lifted${weight === null ? '' : `, weights adding to ${weight}`} x ${minutes} min x ${rateText(rate)}`;
const leftText = ({ speed, activity, until, liftedBy, liftedAfter }: LimitLeft): string =>
  until === null
    ? `${speed} after ${activity}, which no later work is planned to lift: taken as lifted ${liftedAfter} min after the booked end`
    : `${speed} after ${activity} until ${liftedBy} ends at ${clock(until)}`;

export const formulaSentences = {
  rate: (rate: RateOf) => rateText(rate),
  'damages-sum': (given: {
    readonly minutes: number;
    readonly rate: RateOf;
    readonly full: SumOf;
    /** Where the sum is more: what it is held to. */
    readonly cap: SumOf | null;
  }) =>
    `${given.minutes} min charged x ${rateText(given.rate)} = ${sumText(given.full)}${held(given.cap)}`,

  'charge-due': ({ minutes, after, charge }: OverLimit & { readonly charge: SumOf }) =>
    `${minutes} min is more than ${after} min: ${sumText(charge)}`,
  'charge-not-due': ({ minutes, after }: OverLimit) =>
    `${minutes} min is not more than ${after} min: nothing`,
  'length-booked': ({ limit }: { readonly limit: number }) =>
    `the booking alone is more than ${limit} h: nothing more for the overrun`,
  'length-due': ({ hours, limit, charge }: LengthOver & { readonly charge: SumOf }) =>
    `${hours} h counted from start to handback is more than ${limit} h: ${sumText(charge)}`,
  'length-not-due': ({ hours, limit }: LengthOver) =>
    `${hours} h counted from start to handback is not more than ${limit} h: nothing`,
  /** A closure against a number of hours. `clocks`: minutes by which they go forward in it. */
  'length-measured': (given: {
    readonly elapsed: number;
    readonly holiday: number;
    readonly exceeded: boolean;
    readonly limit: number;
    readonly clocks: number;
    readonly decides: boolean;
  }) => {
    const less =
      given.holiday === 0 ? '' : ` less ${durationText(given.holiday)} on public holidays`;
    const clocks =
      given.clocks === 0
        ? ''
        : `; clocks go ${given.clocks > 0 ? 'forward' : 'back'} ${durationText(Math.abs(given.clocks))} in it${given.decides ? ', which decides' : ''}`;
    return `${durationText(given.elapsed)} elapsed${less}: ${given.exceeded ? '' : 'not '}more than ${given.limit} h${clocks}`;
  },

  'key-date-as-planned': ({ ends, due, cost }: KeyDateEnd, say: SayPhrase) =>
    `planned to end ${stamp(ends)}, due ${stamp(due)}: ${say(cost)}`,
  'key-date-by-overrun': (
    { ends, due, cost, less }: KeyDateEnd & { readonly less: Less | null },
    say: SayPhrase,
  ) => `ends ${stamp(ends)}, due ${stamp(due)}: ${say(cost)}${lessText(less)}`,
  'key-date-in-time': () => 'in time: nothing',
  'key-date-cost': (given: {
    /** Days begun, or minutes where a part of a day is paid in part. */
    readonly count: number;
    readonly by: 'day' | 'minute';
    readonly perDay: SumOf | null;
    readonly once: SumOf | null;
    readonly cap: SumOf | null;
    readonly total: SumOf;
  }) => {
    const { count, perDay, once, cap } = given;
    const days = count === 1 ? 'day or part of a day' : 'days or parts of days';
    const parts = [
      ...(perDay === null
        ? []
        : [
            given.by === 'day'
              ? `${count} ${days} x ${sumText(perDay)}`
              : `${count} min x ${sumText(perDay)} a day`,
          ]),
      ...(once === null ? [] : [`${sumText(once)} once`]),
    ];
    return `${parts.join(' + ')}${cap === null ? '' : `, not more than ${sumText(cap)}`} = ${sumText(given.total)}`;
  },
  'key-date-no-place': () => 'not all of its work has a place: not known',
  'key-date-no-price': () => 'the price book has no price for it',

  'no-interval-begun': () => 'no interval has begun',
  'late-opening-sum': (given: {
    readonly begun: readonly {
      readonly count: number;
      readonly minutes: number;
      readonly each: SumOf;
      /** A percentage of the full rate, or the least or most that holds in its place. */
      readonly bound: 'least' | 'most' | { readonly percent: string };
    }[];
    readonly full: SumOf;
    readonly cap: SumOf | null;
  }) => {
    const begun = given.begun.map(
      ({ count, minutes, each, bound }) =>
        `${count} begun of ${minutes} min x ${sumText(each)} (${typeof bound === 'string' ? `the ${bound}` : `${bound.percent} %`})`,
    );
    return `${begun.join(' + ')} = ${sumText(given.full)}${held(given.cap)}`;
  },

  'no-train-held': () => 'no train is held',
  'trains-late-sum': (given: {
    readonly trains: number;
    readonly cancelled: number;
    /** Minutes at which a cancelled one is charged. */
    readonly deemed: number;
    readonly weighted: string;
    readonly rate: RateOf;
    readonly total: SumOf;
  }) => {
    const gone =
      given.cancelled === 0
        ? ''
        : `, ${given.cancelled} of them cancelled at ${given.deemed} minutes each`;
    return `${given.trains} ${given.trains === 1 ? 'train' : 'trains'} late${gone}: ${given.weighted} weighted minutes x ${rateText(given.rate)} = ${sumText(given.total)}`;
  },
  'no-minute-in-band': () => 'no minute is in a band',
  'bands-sum': (given: {
    readonly parts: readonly { readonly minutes: number; readonly rate: RateOf }[];
    readonly total: SumOf;
  }) =>
    `${given.parts.map(({ minutes, rate }) => `${minutes} min x ${rateText(rate)}`).join(' + ')} = ${sumText(given.total)}`,

  'lost-units-sum': (
    given: {
      readonly units: number;
      readonly what: Phrase;
      readonly each: SumOf;
      readonly total: SumOf;
    },
    say: SayPhrase,
  ) => `${given.units} ${say(given.what)} x ${sumText(given.each)} each = ${sumText(given.total)}`,
  units: () => 'units',

  'restriction-left-sum': (given: {
    readonly left: readonly LimitLeft[];
    readonly under: UnderLimit;
    readonly total: SumOf;
  }) =>
    `${given.left.map(leftText).join('; ')}: ${underText(given.under)} = ${sumText(given.total)}`,
  'restriction-sum': (given: {
    readonly under: UnderLimit;
    readonly total: SumOf;
    readonly less: Less | null;
  }) => `${underText(given.under)} = ${sumText(given.total)}${lessText(given.less)}`,
  'restriction-not-due': ({ minutes, after }: OverLimit) =>
    `no restriction by the overrun: ${minutes} min is not more than ${after} min`,

  'standing-sum': (given: {
    readonly groups: readonly { readonly amount: number; readonly paid: readonly Paid[] }[];
    readonly rate: SumOf;
    readonly total: SumOf;
    /** Minutes paid, where they are more than the overrun. */
    readonly longest: number | null;
  }) => {
    const groups = given.groups.map(
      ({ amount, paid }) => `${amount} x (${paid.map(paidText).join(' + ')})`,
    );
    const sum = groups.length > 1 ? `(${groups.join(' + ')})` : groups[0];
    const why =
      given.longest === null ? '' : ` (${given.longest} min paid: least hours or started blocks)`;
    return `${sum} x ${sumText(given.rate)} an hour = ${sumText(given.total)}${why}`;
  },
  'leaves-before-handback': (
    { left, why }: { readonly left: Moment; readonly why: Phrase },
    say: SayPhrase,
  ) => `it leaves at ${clock(left)}, before handback: ${say(why)}`,
  'least-hours-pay': () => 'its least hours pay for these minutes already: nothing is added',
  'nothing-beyond-booking': () => 'no time is charged beyond what the booking pays',
  'call-out-sum': (given: {
    readonly amount: number;
    readonly resource: string;
    readonly window: string;
    readonly paid: readonly Paid[];
    readonly rate: SumOf;
    readonly total: SumOf;
    /** Minutes planned, where least hours make them more. */
    readonly planned: number | null;
  }) =>
    `${given.amount} x ${given.resource} in ${given.window}: (${given.paid.map(factorText).join(' + ')}) x ${sumText(given.rate)} an hour = ${sumText(given.total)}${given.planned === null ? '' : ` (least hours; ${given.planned} min planned)`}`,

  'booking-sum': (given: {
    readonly windows: { readonly count: number; readonly each: SumOf } | null;
    readonly minutes: number;
    readonly hour: SumOf;
    readonly notice: { readonly factor: string; readonly name: string } | null;
    readonly total: SumOf;
  }) => {
    const { windows, notice } = given;
    const time = `${given.minutes} min x ${sumText(given.hour)} an hour`;
    const parts =
      windows === null ? time : `(${windows.count} x ${sumText(windows.each)} a window + ${time})`;
    return `${parts}${notice === null ? '' : ` x ${notice.factor} (${notice.name})`} = ${sumText(given.total)}`;
  },
  're-booking-sum': (given: {
    readonly units: number;
    readonly unit: SumOf;
    readonly visits: number;
    readonly visit: SumOf;
    readonly total: SumOf;
  }) =>
    `${given.units} left over x ${sumText(given.unit)} + ${given.visits} further ${given.visits === 1 ? 'visit' : 'visits'} x ${sumText(given.visit)} = ${sumText(given.total)}`,

  'recorded-sum': ({ sum, share }: { readonly sum: SumOf; readonly share: string | null }) =>
    `as recorded: ${sumText(sum)}${shared(share)}`,
  'share-of': (
    { formula, share }: { readonly formula: Phrase; readonly share: string },
    say: SayPhrase,
  ) => `${say(formula)}${shared(share)}`,
  'stood-by-sum': (given: {
    readonly amount: number;
    readonly paid: readonly Paid[];
    readonly rate: SumOf;
    readonly share: string | null;
    readonly total: SumOf;
  }) =>
    `${given.amount} x (${given.paid.map(factorText).join(' + ')}) x ${sumText(given.rate)} an hour${shared(given.share)} = ${sumText(given.total)}`,
  'train-sum': (given: {
    readonly minutes: number;
    /** So late that the price book calls it cancelled. */
    readonly overThreshold: boolean;
    readonly weight: number;
    readonly rate: RateOf;
    readonly share: string | null;
    readonly total: SumOf;
  }) =>
    `${given.minutes} min${given.overThreshold ? ' (more than the cancellation threshold)' : ''} x weight ${given.weight} x ${rateText(given.rate)}${shared(given.share)} = ${sumText(given.total)}`,
};
