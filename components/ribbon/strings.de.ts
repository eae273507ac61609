import { cautionLines, kindText, statusText } from '../shared/words.de.js';
import type { RibbonStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: RibbonStrings = {
  empty:
    'Noch keine Sperrpausen. Sie in den Plan aufnehmen: Jede braucht einen Namen, einen Beginn und ein Ende.',
  key: 'Legende',
  kind: kindText,
  status: statusText,
  isolated: 'freigeschaltet',
  asPicture: 'Als Bild',
  asTable: 'Als Tabelle',
  axis: 'Sperrpause, von Mittag bis Mittag',
  list: 'Sperrpausen im Zeitverlauf',
  table: 'Sperrpausen als Tabelle',
  window: 'Sperrpause',
  fromTo: 'Von, bis',
  statusHead: 'Stand',
  booked: 'Gebucht',
  usable: 'Nutzbar',
  usableOf: (stretch) => `${stretch}, nutzbar`,
  of: (booked) => `von ${booked}`,
  none: 'keine',
  notRead: 'nicht gelesen',
  clocksForward: (size) => `Uhr ${size} vor`,
  clocksBack: (size) => `Uhr ${size} zurück`,
  clocks: (size) => `Uhr ${size}`,
  weekFrom: (day) => `ab ${day}`,
  printedSome: (count, left) =>
    `Gedruckt sind die ersten ${count} Sperrpausen. ${left} weitere stehen nicht auf diesem Papier: Zum Drucken den Plan teilen.`,
  cautions: 'Warnhinweise',
  cautionLines,
};
