import type { PriceSentences } from '../../src/engine/index.js';
import { headTitles } from '../overrun/head-titles.de.js';
import { formulas } from './formulas.de.js';
import { form, moment, number, rate, time } from './parts.de.js';

// From memory, to be read by a native speaker of the trade.

export const prices: PriceSentences = {
  ...formulas,
  'delay-to-trains': () => headTitles['operator-delay'],
  'delay-by-minute': () => 'Verspätung nach Minuten',
  'plant-standing': ({ resource }) => `Wartendes Gerät: ${resource}`,
  'labour-standing': ({ resource }) => `Wartendes Personal: ${resource}`,
  'left-over-booked-again': () => 'Übrige Arbeit, neu gebucht',
  'delay-damages': () => headTitles.damages,
  'restriction-planned': () => 'Langsamfahrstelle, die der Plan hinterlässt',
  'restriction-after': () => 'Langsamfahrstelle nach der Rückgabe',
  'key-date-of': ({ package: pack }) => `Ecktermin: ${pack}`,
  'key-date-planned': ({ name, package: pack }) => `${name ?? 'Ecktermin'}: ${pack}, wie geplant`,

  'damages-begin': () => 'die Vertragsstrafe beginnt',
  'damages-capped': () => 'die Vertragsstrafe erreicht ihre Obergrenze',
  'late-opening-band': ({ name, percent, minutes }) =>
    `${name}: ${percent} % für je angefangene ${number(minutes)} min`,
  'charge-capped': ({ name }) => `${name} erreicht die Obergrenze`,
  'restriction-begins': () => 'Langsamfahrstelle nach der Rückgabe',
  'train-held': ({ train }) => `${train} wird aufgehalten`,
  'train-cancelled': ({ train }) => `${train} fällt aus`,
  'rate-after': (given) => `${rate(given.rate)} nach ${number(given.minutes)} min`,
  'at-factor': ({ resource, factor, names }) =>
    `${resource} mit Faktor ${factor}${names.length > 0 ? ` (${names.join(', ')})` : ''}`,
  'least-hours-paid': ({ hours, resource }) => `mindestens ${number(hours)} h von ${resource}`,
  'least-hours-used-up': ({ hours, resource }) =>
    `Mindeststunden von ${resource} (${number(hours)} h) aufgebraucht`,

  'account-train': ({ train, due, passed, late, cancelled }) =>
    `${train}, fällig ${moment(due)}, ${
      cancelled
        ? 'ausgefallen'
        : passed
          ? `durchgefahren ${moment(passed)}, ${number(late)} min zu spät`
          : `berechnet ${number(late)} min zu spät`
    }`,
  'stood-by': ({ amount, resource, from, to }) =>
    `${number(amount)} × ${resource}, ${moment(from)} bis ${moment(to)}`,
  'booking-of': ({ window }) => `Buchung von ${window}`,
  'booking-longer': ({ window, minutes }) =>
    `Buchung von ${window} um ${number(minutes)} min länger`,
  'given-by-planner': () => 'vom Planer angegeben',
  'as-recorded': () => 'wie aufgezeichnet',

  'no-plan-given': () => 'kein Plan ist gegeben',
  'own-work-ends-last': ({ activity }) => `die eigene Arbeit endet zuletzt, mit ${activity}`,
  'own-work-over-sooner': ({ minutes, activity }) =>
    `die eigene Arbeit endet ${time(minutes)} vor dem letzten Stück, ${activity}`,
  'stays-by-price-book': () => 'bleibt nach der Preisliste bis zur Rückgabe',
  'leaves-by-price-book': () => 'geht nach der Preisliste nach seiner Arbeit',

  'no-delay-price': () =>
    'Verspätung von Zügen ist nicht bepreist: Die Preisliste hat dafür keinen Eintrag.',
  'no-train-listed': ({ window }) =>
    `Nach der Sperrpause ${window} ist kein Zug aufgeführt; Verspätung von Zügen kostet daher hier nichts.`,
  'train-list-ends': ({ passes, train, minutes }) =>
    `Die Liste der Züge endet ${moment(passes)} (${train}); eine Überziehung ab ${number(minutes)} min hält diesen Zug auf. Spätere Züge sind nicht bepreist.`,
  'left-over-unpriced': () =>
    'Arbeit, die durch eine Überziehung übrig bleibt, ist hier nicht bepreist: Alle geplante Arbeit gilt als fertig, bevor das Gleis zurückgegeben wird.',
  'key-dates-without-plan': () =>
    'Es ist kein Plan der Arbeit gegeben; Ecktermine, die eine Überziehung verspätet, sind daher nicht bepreist.',
  'key-date-unplaced': ({ package: pack }) =>
    `Nicht alle Arbeit von ${pack} hat einen Platz; was es kostet, den Ecktermin zu verfehlen, ist daher nicht bekannt.`,
  'key-date-unpriced': ({ package: pack }) =>
    `Den Ecktermin von ${pack} zu verfehlen ist nicht bepreist: Die Preisliste hat dafür keine Summe.`,
  'no-restriction-price': () =>
    'Eine Langsamfahrstelle nach der Rückgabe ist nicht bepreist: Die Preisliste hat dafür keinen Eintrag.',
  'speed-left-unpriced': ({ speed, activity }) =>
    `Nach ${activity} bleiben ${speed} auf dem Gleis: Was das kostet, ist nicht bepreist.`,
  'restriction-beyond-trains': () =>
    'Die Langsamfahrstelle dauert vielleicht länger, als Züge aufgeführt sind: Die Züge danach sind nicht bepreist. Die Zahl der Züge in der Preisliste angeben.',
  'no-rate': ({ resource }) =>
    `Die Zeit von ${resource} ist nicht bepreist: Ein Preis je Stunde fehlt.`,
  'nobody-on-site': () =>
    'Wartendes Gerät und Personal sind nicht bepreist: Kein Einsatzmittel ist auf der Baustelle.',
  'stands-from-start': () =>
    'Es ist kein Plan der Arbeit gegeben; alles, was einen Preis je Stunde hat und zum gebuchten Ende da ist, gilt als vom Beginn der Sperrpause an wartend.',
  'restriction-claimed-twice': () =>
    'Die Langsamfahrstelle ist nach der Zahl der Züge in der Preisliste bepreist, und aufgezeichnete Verspätung kann dieselben Minuten enthalten: Darauf achten, dass sie nicht zweimal gefordert werden.',
  'cancelled-without-minutes': ({ train }) =>
    `${train} ist ausgefallen, aber die Preisliste nennt keine Minuten für einen ausgefallenen Zug: Er kostet hier nichts.`,
  'trains-not-recorded': ({ count }) =>
    `${number(count)} ${form(count, 'verspäteter Zug hat', 'verspätete Züge haben')} keine aufgezeichnete Zeit und ${form(count, 'ist', 'sind')} aus der Folge der Züge nach der Rückgabe berechnet.`,
  'train-not-due': ({ train, window }) =>
    `${train} hat eine aufgezeichnete Zeit, ist aber nicht unter den Zügen nach ${window}: Er ist nicht bepreist.`,
};
