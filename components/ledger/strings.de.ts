import { cautionLines, kindText } from '../shared/words.de.js';
import type { LedgerStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: LedgerStrings = {
  pick: 'Eine Sperrpause wählen, um ihre Minuten zu sehen.',
  asPicture: 'Bild',
  asTable: 'Tabelle',
  shortfall: (time) => `Die Abzüge verlangen ${time} mehr, als die Sperrpause hat.`,
  picture: 'Von der gebuchten zur nutzbaren Zeit',
  table: 'Zeitrechnung als Tabelle',
  kind: kindText,
  booked: 'Gebucht',
  usable: 'Nutzbar',
  from: 'Von',
  to: 'Bis',
  rule: 'Regel',
  minutes: 'Minuten',
  bookedSum: 'Gebucht, die Summe',
  ofItUsable: 'davon nutzbar',
  cautions: 'Warnhinweise',
  cautionLines,
};
