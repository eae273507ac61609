import { cautionLines, statusText } from '../shared/words.de.js';
import type { BookingStrings } from './strings.js';
import { inTwo } from '../shared/in-two.de.js';

// From memory, to be read by a native speaker of the trade.
export const strings: BookingStrings = {
  empty:
    'Noch keine Sperrpause anzumelden. Sperrpausen in den Plan aufnehmen, um zu sehen, bis wann jede zu beantragen ist.',
  title: 'Anmeldefristen',
  rules: (name) => `Nach: ${name}`,
  state: {
    met: 'gehalten',
    due: 'fällig',
    late: 'überfällig',
    'missed at adding': 'bei Aufnahme schon verpasst',
    'not needed': 'nicht nötig',
  },
  asOf: (moment) => `Stand ${moment}`,
  summary: 'Fristen nach ihrem Stand',

  show: 'Zeigen',
  open: 'Offene',
  all: 'Alle',
  whose: 'Wessen',
  everybody: 'die von allen',
  ofAll: (shown, all) => `${shown} von ${all} Fristen stehen hier.`,
  soon: 'Nächste 4 Wochen',
  onlyLate: 'Nur überfällige',
  nothingShown: 'Keine Frist ist so.',

  strip: (weeks) => `Fällig in den nächsten ${weeks} Wochen`,
  stripTold: (due, late) => `${due} in dieser Zeit; ${late} schon überfällig.`,
  stripEmpty: 'In dieser Zeit ist nichts fällig.',
  now: 'jetzt',

  milestone: 'Frist',
  dueHead: 'Fällig',
  left: 'Noch Zeit',
  stateHead: 'Stand',
  ago: (time) => `vor ${time}`,
  inTime: (time) => `in ${time}`,
  metLate: (time) => `${time} zu spät gehalten`,
  by: (who) => `durch ${who}`,
  before: {
    window: 'Von der Sperrpause an gezählt.',
    'railway week': 'Von der Bahnwoche an gezählt.',
    'four-week period': 'Von der Vier-Wochen-Periode an gezählt.',
    'timetable change': 'Vom Fahrplanwechsel an gezählt.',
  },
  inTwo,
  sources: 'Woher die Vorlaufzeiten kommen',
  notInPlan: 'Diese Sperrpause steht nicht im gegebenen Plan.',

  days: (count) => (count === 1 ? '1 Tag' : `${count} Tage`),
  window: 'Sperrpause',
  windowsHead: 'Periode und Klasse jeder Sperrpause',
  periodHead: 'Vier-Wochen-Periode',
  status: statusText,
  share: 'Betroffene Züge',
  shareUnit: '% der Züge eines Tages',
  restrictionHead: 'Klasse der Einschränkung',
  notSaid: 'nicht bekannt',
  noShare:
    'Angeben, wie viele Züge des Tages eine Sperrpause trifft: Daraus folgen ihre Klasse und die Fristen, die daran hängen.',
  twoPeriods: 'liegt in zwei Perioden',

  save: 'Als Kalenderdatei speichern',
  noCalendar: (why) =>
    `Die Kalenderdatei wurde nicht erstellt (${why}). Versuchen Sie es noch einmal; hilft das nicht, laden Sie die Seite neu.`,
  cautions: 'Warnhinweise',
  cautionLines,
};
