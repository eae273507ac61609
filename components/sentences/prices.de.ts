import type { PriceSentences } from '../../src/engine/index.js';
import { headTitles } from '../overrun/head-titles.de.js';
import { number, time } from './parts.de.js';

// From memory, to be read by a native speaker of the trade.

export const prices: PriceSentences = {
  'delay-to-trains': () => headTitles['operator-delay'],
  'delay-by-minute': () => 'Verspätung nach Minuten',
  'plant-standing': ({ resource }) => `Wartendes Gerät: ${resource}`,
  'labour-standing': ({ resource }) => `Wartendes Personal: ${resource}`,
  'left-over-booked-again': () => 'Übrige Arbeit, neu gebucht',
  'delay-damages': () => headTitles.damages,
  'restriction-planned': () => 'Langsamfahrstelle, die der Plan hinterlässt',
  'restriction-after': () => 'Langsamfahrstelle nach der Rückgabe',
  'key-date-planned': ({ name, package: pack }) => `${name}: ${pack}, wie geplant`,

  'damages-begin': () => 'die Vertragsstrafe beginnt',
  'damages-capped': () => 'die Vertragsstrafe erreicht ihre Obergrenze',
  'late-opening-band': ({ name, percent, minutes }) =>
    `${name}: ${percent} % für je angefangene ${number(minutes)} min`,
  'charge-capped': ({ name }) => `${name} erreicht die Obergrenze`,
  'restriction-begins': () => 'Langsamfahrstelle nach der Rückgabe',
  'train-held': ({ train }) => `${train} wird aufgehalten`,
  'train-cancelled': ({ train }) => `${train} fällt aus`,
  'rate-after': ({ rate, minutes }) => `${rate} nach ${number(minutes)} min`,
  'at-factor': ({ resource, factor, names }) =>
    `${resource} mit Faktor ${factor}${names.length > 0 ? ` (${names.join(', ')})` : ''}`,
  'least-hours-paid': ({ hours, resource }) => `mindestens ${number(hours)} h von ${resource}`,
  'least-hours-used-up': ({ hours, resource }) =>
    `Mindeststunden von ${resource} (${number(hours)} h) aufgebraucht`,

  'no-plan-given': () => 'kein Plan ist gegeben',
  'own-work-ends-last': ({ activity }) => `die eigene Arbeit endet zuletzt, mit ${activity}`,
  'own-work-over-sooner': ({ minutes, activity }) =>
    `die eigene Arbeit endet ${time(minutes)} vor dem letzten Stück, ${activity}`,
  'stays-by-price-book': () => 'bleibt nach der Preisliste bis zur Rückgabe',
  'leaves-by-price-book': () => 'geht nach der Preisliste nach seiner Arbeit',
};
