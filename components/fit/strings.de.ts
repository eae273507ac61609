import { countText } from '../shared/format.js';
import { cautionLines } from '../shared/words.de.js';
import type { FitStrings } from './strings.js';

const packages = (count: number): string => countText(count, 'Paket', 'Pakete');
const windows = (count: number): string => countText(count, 'Sperrpause', 'Sperrpausen');

// From memory, to be read by a native speaker of the trade.
export const strings: FitStrings = {
  nothing: 'Noch nichts zu vergleichen: Die Karte braucht Sperrpausen und Arbeit.',
  notWorkedOut: (packs, closures) =>
    `Nicht berechnet: ${packages(packs)} gegen ${windows(closures)}.`,
  key: 'Legende',
  fits: 'alles passt hinein, nutzbare Zeit bleibt übrig',
  part: 'ein Teil passt hinein: Stücke, die fertig werden, oder Einheiten',
  short: 'nichts davon passt hinein, weil Zeit fehlt;',
  near: 'schattiert, wenn höchstens eine Stunde fehlt',
  nearOnPaper: 'umrandet, wenn höchstens eine Stunde fehlt',
  never:
    'nichts davon passt hinein, wie lang die Sperrpause auch ist; der Grund steht in der Zelle',
  alone:
    'Jedes Paket für sich, geforderte Reserve eingehalten; die unabhängige Prüfung sieht diese Karte nicht an',
  order: 'Reihenfolge von Paketen und Sperrpausen',
  asPlanned: 'Wie im Plan',
  goesFirst: 'Was zuerst gehen kann',
  byAmount:
    'Danach, wie viele ganze Pakete hineinpassen, dann, wie viel von den anderen hineinpasst.',
  amountsComing:
    'Danach, wie viele ganze Pakete hineinpassen; wie viel von den anderen, wird gerade berechnet.',
  tooManyPairs: (pairs) =>
    `Danach, wie viele ganze Pakete hineinpassen, dann, wie vielen nur Zeit fehlt: Wie viel hineinpasst, wird nicht für alle ${countText(pairs, 'Paar', 'Paare')} berechnet.`,
  map: 'Pakete gegen Sperrpausen',
  package: 'Paket',
  inPieces: (time, pieces) => `${time} in ${countText(pieces, 'Stück', 'Stücken')}`,
  printedPart: (packs, closures, from, to) =>
    `Auf diesem Papier: ${packages(packs)} gegen ${windows(closures)}, von ${from} bis ${to}.`,
  leftOutWindows: (count) =>
    `${windows(count)} nicht gedruckt: Die Karte zu einer anderen Sperrpause schieben, um ab dort zu drucken.`,
  leftOutPackages: (count) => `${packages(count)} nicht gedruckt.`,
  open: (count) =>
    `${countText(count, 'Zelle sagt', 'Zellen sagen')} nur, dass nicht alles hineinpasst: Wie viel, wurde in der Zeit nicht berechnet.`,
  spare: 'übrig',
  workingItOut: 'wird berechnet',
  notShown: 'nicht gezeigt,',
  toFit: 'dass es passt',
  notShownToFit: 'nicht gezeigt, dass es passt',
  missing: 'fehlen',
  missingOf: (time) => `${time} fehlen`,
  notRead: 'nicht gelesen',
  atLeast: (amount) => `mindestens ${amount}`,
  // Short forms: a cell of the map is no wider than its window's name.
  unitsOf: (units, of) => `${units} von ${of} Einh.`,
  piecesOf: (pieces, of) => `${pieces} von ${of} Stk.`,
  none: 'nichts',
  noneFound: 'nichts gefunden',
  reason: {
    'fixed-elsewhere': 'anderswo festgelegt',
    'isolation-not-booked': 'nicht freigeschaltet',
    'key-date': 'nach Ecktermin',
    'lines-not-blocked': 'Gleis nicht gesperrt',
    'needed-before': 'früher gebraucht',
    'no-room': 'kein Platz',
    'no-usable-stretch': 'zerstückelt',
    'no-usable-time': 'nichts nutzbar',
    'not-shown': 'nicht gezeigt',
    'not-before': 'zu früh',
    'nothing-left': 'schon fertig',
    'rows-left-out': 'Zeilen fehlen',
    'outside-extent': 'außerhalb',
    'resource-not-there': 'Mittel fehlt',
    'resource-short': 'Mittel knapp',
    'too-short': 'zu kurz',
    'waits-for': 'muss warten',
    'waits-for-itself': 'wartet auf sich',
    'not-made-good': 'nicht geschlossen',
    'place-taken': 'Ort belegt',
    'longer-than-a-shift': 'länger als Schicht',
    'curing-not-known': 'Aushärten unklar',
    'not-cured': 'nicht ausgehärtet',
    'left-open': 'bleibt offen',
    withdrawn: 'zurückgezogen',
  },
  otherReason: (code) => `geht nicht (${code})`,
  cautions: 'Warnhinweise',
  cautionLines,
};
