// English for cost rows that the price book does not name, for the minutes at which the cost steps, and for why
// people are on site.
import { durationText } from '../../calendar/index.js';
import { clockWords } from '../../calendar/clock-words.js';
import type { Moment } from '../../model/index.js';
import { unnamedKeyDate } from '../../model/unnamed-key-date.js';
import { headTitles } from '../head-titles.js';
import { rateText, type RateOf } from './money-words.js';

type Of = {
  readonly name: string;
};

/** A train of an account. Without `passed`: not recorded. */
type TrainLate = {
  readonly train: string;
  readonly due: Moment;
  readonly passed: Moment | null;
  readonly late: number;
  readonly cancelled: boolean;
};
type StoodBy = {
  readonly amount: number;
  readonly resource: string;
  readonly from: Moment;
  readonly to: Moment;
};
const clock = ({ at, zone }: Moment): string => clockWords(at, zone);

export const rowSentences = {
  'delay-to-trains': () => headTitles['operator-delay'],
  'delay-by-minute': () => 'Delay by the minute',
  'plant-standing': ({ resource }: { readonly resource: string }) => `Plant standing: ${resource}`,
  'labour-standing': ({ resource }: { readonly resource: string }) =>
    `Labour standing: ${resource}`,
  'left-over-booked-again': () => 'Work left over, booked again',
  'delay-damages': () => headTitles.damages,
  'restriction-planned': () => 'Speed restriction that the plan leaves',
  'restriction-after': () => 'Speed restriction after handback',
  'key-date-of': ({ package: pack }: { readonly package: string }) => `Key date: ${pack}`,
  'key-date-planned': ({
    name,
    package: pack,
  }: {
    /** Null where nobody named the price. */
    readonly name: string | null;
    readonly package: string;
  }) => `${name ?? unnamedKeyDate}: ${pack}, as planned`,

  'damages-begin': () => 'delay damages begin',
  'damages-capped': () => 'delay damages reach their cap',
  'late-opening-band': ({
    name,
    percent,
    minutes,
  }: Of & { readonly percent: string; readonly minutes: number }) =>
    `${name}: ${percent} % for each ${minutes} min begun`,
  'charge-capped': ({ name }: Of) => `${name} reaches its cap`,
  'restriction-begins': () => 'speed restriction after handback',
  'train-held': ({ train }: { readonly train: string }) => `${train} is held`,
  'train-cancelled': ({ train }: { readonly train: string }) => `${train} is cancelled`,
  'rate-after': ({ rate, minutes }: { readonly rate: RateOf; readonly minutes: number }) =>
    `${rateText(rate)} after ${minutes} min`,
  'at-factor': ({
    resource,
    factor,
    names,
  }: {
    readonly resource: string;
    readonly factor: string;
    readonly names: readonly string[];
  }) => `${resource} at factor ${factor}${names.length > 0 ? ` (${names.join(', ')})` : ''}`,
  'account-train': ({ train, due, passed, late, cancelled }: TrainLate) =>
    `${train}, due ${clock(due)}, ${
      cancelled
        ? 'cancelled'
        : passed
          ? `passed ${clock(passed)}, ${late} min late`
          : `worked out to be ${late} min late`
    }`,
  'stood-by': ({ amount, resource, from, to }: StoodBy) =>
    `${amount} x ${resource}, ${clock(from)} to ${clock(to)}`,
  'booking-of': ({ window }: { readonly window: string }) => `Booking ${window}`,
  'booking-longer': ({ window, minutes }: { readonly window: string; readonly minutes: number }) =>
    `Booking ${window} for ${minutes} min more`,
  'given-by-planner': () => 'given by the planner',
  'as-recorded': () => 'as recorded',

  'least-hours-paid': ({
    hours,
    resource,
  }: {
    readonly hours: number;
    readonly resource: string;
  }) => `least ${hours} h of ${resource}`,
  'least-hours-used-up': ({
    hours,
    resource,
  }: {
    readonly hours: number;
    readonly resource: string;
  }) => `least ${hours} h of ${resource} used up`,

  'no-plan-given': () => 'no plan is given',
  'own-work-ends-last': ({ activity }: { readonly activity: string }) =>
    `its own work ends last, with ${activity}`,
  'own-work-over-sooner': ({
    minutes,
    activity,
  }: {
    readonly minutes: number;
    readonly activity: string;
  }) => `its own work is over ${durationText(minutes)} before the last piece, ${activity}, ends`,
  'stays-by-price-book': () => 'stays until handback by the price book',
  'leaves-by-price-book': () => 'leaves after its work by the price book',
};
