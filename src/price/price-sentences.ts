// Sentences for cost rows that the price book does not name, for the minutes at which the cost steps, and for why
// people are on site.
import { durationText } from '../calendar/index.js';
import { saysBy } from '../model/index.js';
import { headTitles } from './head-titles.js';

type Nothing = Readonly<Record<never, never>>;
interface Of {
  readonly name: string;
}

export const priceSentences = {
  'delay-to-trains': (_: Nothing) => headTitles['operator-delay'],
  'delay-by-minute': (_: Nothing) => 'Delay by the minute',
  'plant-standing': ({ resource }: { readonly resource: string }) => `Plant standing: ${resource}`,
  'labour-standing': ({ resource }: { readonly resource: string }) =>
    `Labour standing: ${resource}`,
  'left-over-booked-again': (_: Nothing) => 'Work left over, booked again',
  'delay-damages': (_: Nothing) => headTitles.damages,
  'restriction-planned': (_: Nothing) => 'Speed restriction that the plan leaves',
  'restriction-after': (_: Nothing) => 'Speed restriction after handback',
  'key-date-planned': ({ name, package: pack }: Of & { readonly package: string }) =>
    `${name}: ${pack}, as planned`,

  'damages-begin': (_: Nothing) => 'delay damages begin',
  'damages-capped': (_: Nothing) => 'delay damages reach their cap',
  'late-opening-band': ({
    name,
    percent,
    minutes,
  }: Of & { readonly percent: string; readonly minutes: number }) =>
    `${name}: ${percent} % for each ${minutes} min begun`,
  'charge-capped': ({ name }: Of) => `${name} reaches its cap`,
  'restriction-begins': (_: Nothing) => 'speed restriction after handback',
  'train-held': ({ train }: { readonly train: string }) => `${train} is held`,
  'train-cancelled': ({ train }: { readonly train: string }) => `${train} is cancelled`,
  'rate-after': ({ rate, minutes }: { readonly rate: string; readonly minutes: number }) =>
    `${rate} after ${minutes} min`,
  'at-factor': ({
    resource,
    factor,
    names,
  }: {
    readonly resource: string;
    readonly factor: string;
    readonly names: readonly string[];
  }) => `${resource} at factor ${factor}${names.length > 0 ? ` (${names.join(', ')})` : ''}`,
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

  'no-plan-given': (_: Nothing) => 'no plan is given',
  'own-work-ends-last': ({ activity }: { readonly activity: string }) =>
    `its own work ends last, with ${activity}`,
  'own-work-over-sooner': ({
    minutes,
    activity,
  }: {
    readonly minutes: number;
    readonly activity: string;
  }) => `its own work is over ${durationText(minutes)} before the last piece, ${activity}, ends`,
  'stays-by-price-book': (_: Nothing) => 'stays until handback by the price book',
  'leaves-by-price-book': (_: Nothing) => 'leaves after its work by the price book',
};

export const sayPrice = saysBy(priceSentences);
