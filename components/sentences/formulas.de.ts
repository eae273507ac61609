import type { FormulaSentences } from '../../src/engine/index.js';
import { decimal, form, moment, number, rate, sum, time } from './parts.de.js';

// How amounts of money come about. From memory, to be read by a native speaker of the trade.

type Given<K extends keyof FormulaSentences> = Parameters<FormulaSentences[K]>[0];
type Paid = Given<'call-out-sum'>['paid'][number];
type Under = Given<'restriction-sum'>['under'];
type Less = Given<'restriction-sum'>['less'];
type Left = Given<'restriction-left-sum'>['left'][number];
type Sum = Given<'restriction-sum'>['total'];

const held = (cap: Sum | null): string =>
  cap === null ? '' : `, begrenzt auf die Obergrenze von ${sum(cap)}`;
const shared = (share: string | null): string =>
  share === null ? '' : `, davon unser Anteil von ${decimal(share)} %`;
const lessText = (less: Less): string =>
  less === null
    ? ''
    : `; abzüglich ${sum(less.planned)}, die der Plan allein kostet = ${sum(less.rest)}`;
const factorText = ({ minutes, factor }: Paid): string =>
  `${number(minutes)} min mit Faktor ${decimal(factor)}`;
const paidText = (paid: Paid): string =>
  paid.names.length === 0 && paid.factor === '1'
    ? `${number(paid.minutes)} min`
    : `${factorText(paid)} (${paid.names.join(', ')})`;
const underText = (under: Under): string =>
  `${number(under.trains)} ${form(under.trains, 'Zug', 'Züge')} bis zur Aufhebung${under.weight === null ? '' : ` mit zusammen ${decimal(under.weight)} Gewicht`} × ${decimal(under.minutes)} min × ${rate(under.rate)}`;
const leftText = ({ speed, activity, until, liftedBy, liftedAfter }: Left): string =>
  until === null
    ? `${speed} nach ${activity}, ohne dass spätere Arbeit geplant ist, die sie aufhebt: gilt ${number(liftedAfter)} min nach dem gebuchten Ende als aufgehoben`
    : `${speed} nach ${activity}, bis ${liftedBy} am ${moment(until)} endet`;

export const formulas: FormulaSentences = {
  rate,
  'damages-sum': ({ minutes, full, cap, ...given }) =>
    `${number(minutes)} berechnete min × ${rate(given.rate)} = ${sum(full)}${held(cap)}`,

  'charge-due': ({ minutes, after, charge }) =>
    `${number(minutes)} min sind mehr als ${number(after)} min: ${sum(charge)}`,
  'charge-not-due': ({ minutes, after }) =>
    `${number(minutes)} min sind nicht mehr als ${number(after)} min: nichts`,
  'length-booked': ({ limit }) =>
    `schon das Gebuchte ist mehr als ${number(limit)} h: nichts weiter für die Überziehung`,
  'length-due': ({ hours, limit, charge }) =>
    `${decimal(hours)} h vom Beginn bis zur Rückgabe sind mehr als ${number(limit)} h: ${sum(charge)}`,
  'length-not-due': ({ hours, limit }) =>
    `${decimal(hours)} h vom Beginn bis zur Rückgabe sind nicht mehr als ${number(limit)} h: nichts`,
  'length-measured': ({ elapsed, holiday, exceeded, limit, clocks, decides }) =>
    `${time(elapsed)} vergangen${holiday === 0 ? '' : ` abzüglich ${time(holiday)} an Feiertagen`}: ${exceeded ? '' : 'nicht '}mehr als ${number(limit)} h${
      clocks === 0
        ? ''
        : `; die Uhren werden darin um ${time(Math.abs(clocks))} ${clocks > 0 ? 'vorgestellt' : 'zurückgestellt'}${decides ? ', und das entscheidet' : ''}`
    }`,

  'key-date-as-planned': ({ ends, due, cost }, say) =>
    `geplantes Ende ${moment(ends)}, fällig ${moment(due)}: ${say(cost)}`,
  'key-date-by-overrun': ({ ends, due, cost, less }, say) =>
    `Ende ${moment(ends)}, fällig ${moment(due)}: ${say(cost)}${lessText(less)}`,
  'key-date-in-time': () => 'rechtzeitig: nichts',
  'key-date-cost': ({ count, by, perDay, once, cap, total }) => {
    const parts = [
      ...(perDay === null
        ? []
        : [
            by === 'day'
              ? `${number(count)} ${form(count, 'angefangener Tag', 'angefangene Tage')} × ${sum(perDay)}`
              : `${number(count)} min × ${sum(perDay)} je Tag`,
          ]),
      ...(once === null ? [] : [`einmalig ${sum(once)}`]),
    ];
    return `${parts.join(' + ')}${cap === null ? '' : `, höchstens ${sum(cap)}`} = ${sum(total)}`;
  },
  'key-date-no-place': () => 'nicht alle ihre Arbeit hat einen Platz: nicht bekannt',
  'key-date-no-price': () => 'die Preisliste hat dafür keinen Preis',

  'no-interval-begun': () => 'kein Zeitabschnitt ist angefangen',
  'late-opening-sum': ({ begun, full, cap }) =>
    `${begun
      .map(
        ({ count, minutes, each, bound }) =>
          `${number(count)} angefangene zu ${number(minutes)} min × ${sum(each)} (${
            typeof bound === 'string'
              ? { least: 'Mindestbetrag', most: 'Höchstbetrag' }[bound]
              : `${decimal(bound.percent)} %`
          })`,
      )
      .join(' + ')} = ${sum(full)}${held(cap)}`,

  'no-train-held': () => 'kein Zug wird aufgehalten',
  'trains-late-sum': ({ trains, cancelled, deemed, weighted, total, ...given }) =>
    `${number(trains)} ${form(trains, 'Zug', 'Züge')} verspätet${
      cancelled === 0
        ? ''
        : `, davon ${number(cancelled)} ausgefallen mit je ${number(deemed)} Minuten`
    }: ${decimal(weighted)} gewichtete Minuten × ${rate(given.rate)} = ${sum(total)}`,
  'no-minute-in-band': () => 'keine Minute fällt in einen Bereich mit Preis',
  'bands-sum': ({ parts, total }) =>
    `${parts.map((part) => `${number(part.minutes)} min × ${rate(part.rate)}`).join(' + ')} = ${sum(total)}`,

  'lost-units-sum': ({ units, what, each, total }, say) =>
    `${number(units)} ${say(what)} × je ${sum(each)} = ${sum(total)}`,
  units: () => 'Einheiten',

  'restriction-left-sum': ({ left, under, total }) =>
    `${left.map(leftText).join('; ')}: ${underText(under)} = ${sum(total)}`,
  'restriction-sum': ({ under, total, less }) =>
    `${underText(under)} = ${sum(total)}${lessText(less)}`,
  'restriction-not-due': ({ minutes, after }) =>
    `keine Langsamfahrstelle durch die Überziehung: ${number(minutes)} min sind nicht mehr als ${number(after)} min`,

  'standing-sum': ({ groups, longest, total, ...given }) => {
    const each = groups.map(
      ({ amount, paid }) => `${number(amount)} × (${paid.map(paidText).join(' + ')})`,
    );
    return `${each.length > 1 ? `(${each.join(' + ')})` : each[0]} × ${sum(given.rate)} je Stunde = ${sum(total)}${
      longest === null
        ? ''
        : ` (${number(longest)} min bezahlt: Mindeststunden oder angefangene Zeitblöcke)`
    }`;
  },
  'leaves-before-handback': ({ left, why }, say) =>
    `verlässt die Baustelle ${moment(left)}, vor der Rückgabe: ${say(why)}`,
  'least-hours-pay': () => 'die Mindeststunden bezahlen diese Minuten schon: Nichts kommt hinzu',
  'nothing-beyond-booking': () => 'über das Gebuchte hinaus wird keine Zeit berechnet',
  'call-out-sum': ({ amount, resource, window, paid, planned, total, ...given }) =>
    `${number(amount)} × ${resource} in ${window}: (${paid.map(factorText).join(' + ')}) × ${sum(given.rate)} je Stunde = ${sum(total)}${
      planned === null ? '' : ` (Mindeststunden; ${number(planned)} min geplant)`
    }`,

  'booking-sum': ({ windows, minutes, hour, notice, total }) => {
    const length = `${number(minutes)} min × ${sum(hour)} je Stunde`;
    const parts =
      windows === null
        ? length
        : `(${number(windows.count)} × ${sum(windows.each)} je Sperrpause + ${length})`;
    return `${parts}${notice === null ? '' : ` × ${decimal(notice.factor)} (${notice.name})`} = ${sum(total)}`;
  },
  're-booking-sum': ({ units, unit, visits, visit, total }) =>
    `${number(units)} übrig × ${sum(unit)} + ${number(visits)} ${form(visits, 'weiterer Einsatz', 'weitere Einsätze')} × ${sum(visit)} = ${sum(total)}`,

  'recorded-sum': ({ share, ...given }) => `wie aufgezeichnet: ${sum(given.sum)}${shared(share)}`,
  'share-of': ({ formula, share }, say) => `${say(formula)}${shared(share)}`,
  'stood-by-sum': ({ amount, paid, share, total, ...given }) =>
    `${number(amount)} × (${paid.map(factorText).join(' + ')}) × ${sum(given.rate)} je Stunde${shared(share)} = ${sum(total)}`,
  'train-sum': ({ minutes, overThreshold, weight, share, total, ...given }) =>
    `${number(minutes)} min${overThreshold ? ' (mehr als die Grenze zum Ausfall)' : ''} × Gewicht ${number(weight)} × ${rate(given.rate)}${shared(share)} = ${sum(total)}`,

  'input-minutes-charged': () => 'berechnete Minuten',
  'input-grace': () => 'Karenz',
  'input-blocks': () => 'angefangene Zeitblöcke von',
  'input-rate': () => 'Preis',
  'input-cap': () => 'Obergrenze',
  'input-threshold': () => 'Schwelle',
  'input-charge': () => 'Betrag',
  'input-counted': () => 'gezählt',
  'input-holiday-hours': () => 'Stunden an Feiertagen',
  'input-days-late': () => 'angefangene Tage Verspätung',
  'input-minutes-late': () => 'Minuten Verspätung',
  'input-a-day': () => 'je Tag',
  'input-once': () => 'einmalig',
  'input-not-more': () => 'höchstens',
  'input-full-rate': () => 'voller Preis',
  'input-intervals': ({ minutes, percent }) =>
    `angefangene Zeitabschnitte nach ${number(minutes)} min, zu ${decimal(percent)} %`,
  'input-trains-late': () => 'verspätete Züge',
  'input-trains-cancelled': () => 'ausgefallene Züge',
  'input-weighted-minutes': () => 'gewichtete Minuten',
  'input-headway': () => 'Zugfolgezeit',
  'input-minutes-after': ({ minutes }) => `Minuten nach ${number(minutes)}`,
  'input-rate-after': ({ minutes }) => `Preis nach ${number(minutes)} Minuten`,
  'input-left-over': () => 'übrig',
  'input-price-of-one': () => 'Preis je Stück',
  'input-trains-until-lifted': () => 'Züge bis zur Aufhebung',
  'input-sum-of-weights': () => 'Summe der Gewichte',
  'input-minutes-lost': () => 'verlorene Minuten',
  'input-lifted-after': () => 'aufgehoben nach',
  'input-amount': () => 'Anzahl',
  'input-minutes-paid': () => 'bezahlte Minuten',
  'input-minutes-at-factor': ({ factor }) => `Minuten mit Faktor ${decimal(factor)}`,
  'input-least-hours': () => 'Mindeststunden',
  'input-minutes-with-factors': () => 'Minuten mit Faktoren',
  'input-minutes-booked': () => 'gebuchte Minuten',
  'input-price-of-hour': () => 'Preis je Stunde',
  'input-price-of-window': () => 'Preis je Sperrpause',
  'input-notice-factor': () => 'Faktor der Vorlaufzeit',
  'input-further-visits': () => 'weitere Einsätze',
  'input-price-of-visit': () => 'Preis je Einsatz',
  'input-recorded': () => 'aufgezeichnet',
  'input-minutes': () => 'Minuten',
  'input-weight': () => 'Gewicht',
  'holidays-counted': () => 'gezählt',
  'holidays-not-counted': () => 'nicht gezählt',
  'unit-trains': () => 'Züge',
  'unit-min-per-train': () => 'min/Zug',
  'unit-min-from-handback': () => 'min ab der Rückgabe',
  'unit-money-per': ({ currency, minutes }) => `${currency} je ${number(minutes)} min`,
};
