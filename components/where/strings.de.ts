import { countText } from '../shared/format.js';
import { cautionLines, statusText } from '../shared/words.de.js';
import type { WhereStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: WhereStrings = {
  noPlan:
    'Noch ist kein Plan berechnet. Sobald es einen gibt, wird seine Arbeit hier nach Ort und Zeit gezeichnet.',
  noWork: 'Der Plan hat auf diesem Gleis keine Arbeit in einer Sperrpause.',
  title: 'Wo und wann',
  told: 'Jedes Feld ist eine Sperrpause: quer der Ort, nach unten die Zeit. Zeit zwischen Sperrpausen ist ausgelassen. Ein Kasten ist Arbeit über Ort und Zeit; eine schräge Linie ist wiederholte Arbeit, vom unteren Ende ihres Ortes an nach Einheiten gezeichnet, da niemand sagt, von welchem Ende sie ausgeht.',
  line: 'Gleis',
  allLines: 'Alle Gleise',
  status: statusText,
  windows: 'Sperrpausen',
  allWindows: 'Alle mit Arbeit',
  place: 'km + m',
  pieces: (count) => `${countText(count, 'Stück', 'Stücke')} Arbeit`,
  noMeeting:
    'Nach Orten, Gleisen und Zeiten dieses Plans stehen keine zwei Stücke zur selben Zeit am selben Ort.',
  meetings: (count) =>
    `${countText(count, 'Paar steht', 'Paare stehen')} zur selben Zeit am selben Ort.`,
  ofKind: {
    alone: (count) => `${count}, bei denen eines von beiden dort allein sein muss.`,
    unsaid: (count) => `${count}, bei denen niemand gesagt hat, dass beide den Ort teilen dürfen.`,
    shared: (count) => `${count}, bei denen beide den Ort teilen dürfen.`,
  },
  kinds: {
    alone: 'eines muss allein sein',
    unsaid: 'nicht gesagt, dass geteilt wird',
    shared: 'beide dürfen teilen',
  },
  noPlace: (count) =>
    `${countText(count, 'Stück nennt', 'Stücke nennen')} keinen Ort und ${count === 1 ? 'gilt' : 'gelten'} als überall.`,
  meetingTable: 'Paare zur selben Zeit am selben Ort',
  first: 'Das eine',
  second: 'Das andere',
  common: 'Gemeinsamer Ort',
  fromTo: (from, to) => `${from} bis ${to}`,
  wantedOf: (wanted, held) => `${wanted} von ${held}`,
  everywhere: 'überall',
  kind: 'Was gesagt wurde',
  table: 'Die Arbeit als Tabelle',
  work: 'Arbeit',
  window: 'Sperrpause',
  from: 'Von',
  to: 'Bis',
  reach: 'Ort',
  lines: 'Gleise',
  units: 'Einheiten',
  wantedTitle: 'Personal und Gerät je Woche',
  wantedNone: 'Die Arbeit des Plans verlangt weder Personal noch Gerät.',
  wantedTold:
    'Was der Plan von jedem im knappsten Augenblick der Woche braucht, gegen das, was die Liste der Einsatzmittel dann hat. Ein Balken über den Strich hinaus ist zu viel.',
  wanted: 'Gebraucht',
  held: 'Vorhanden',
  resource: 'Einsatzmittel',
  week: 'Woche ab',
  moment: 'Um',
  most: (amount) => `bis zu ${amount}`,
  notListed: 'nicht aufgeführt, also nicht begrenzt',
  short: (count) =>
    count === 0
      ? 'In keiner Woche wird von dem, was aufgeführt ist, mehr gebraucht, als da ist.'
      : `In ${countText(count, 'Woche', 'Wochen')} wird mehr gebraucht, als da ist.`,
  wantedTable: 'Die Wochen als Tabelle',
  cautions: 'Warnhinweise',
  cautionLines,
};
