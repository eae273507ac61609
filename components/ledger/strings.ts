import { cautions } from '../../src/model/index.js';
import { kindText } from '../shared/kinds.js';

/** All texts of the element, except names and figures. Sentences with a figure are functions of its text. */
export const defaultStrings = {
  pick: 'Pick a window to see its minutes.',
  asPicture: 'Picture',
  asTable: 'Table',
  shortfall: (time: string) => `The deductions ask for ${time} more than the window holds.`,
  picture: 'From booked to usable time',
  table: 'Ledger as a table',
  kind: kindText,
  booked: 'Booked',
  usable: 'Usable',
  from: 'From',
  to: 'To',
  rule: 'Rule',
  minutes: 'Minutes',
  bookedSum: 'Booked, the sum',
  ofItUsable: 'of it usable',
  cautions: 'Cautions',
  cautionLines: cautions,
};

export type LedgerStrings = Readonly<typeof defaultStrings>;
