import { cautions } from '../../src/model/index.js';
import { kindText, statusText } from '../shared/kinds.js';

/** All texts of the element, except names and figures. Sentences with a figure are functions of its text. */
export const defaultStrings = {
  /** Shown instead of an empty axis. */
  empty: 'No windows yet. Add them to the plan: each needs a name, a start and an end.',
  key: 'Key',
  kind: kindText,
  status: statusText,
  isolated: 'isolated',
  asPicture: 'As a picture',
  asTable: 'As a table',
  axis: 'Window, drawn from noon to noon',
  list: 'Windows along time',
  table: 'Windows as a table',
  window: 'Window',
  fromTo: 'From, to',
  statusHead: 'Status',
  booked: 'Booked',
  usable: 'Usable',
  usableOf: (stretch: string) => `${stretch}, usable`,
  of: (booked: string) => `of ${booked}`,
  none: 'none',
  notRead: 'not read',
  clocksForward: (size: string) => `clocks forward ${size}`,
  clocksBack: (size: string) => `clocks back ${size}`,
  clocks: (size: string) => `clocks ${size}`,
  /** Above the first window of a week. The shorthand is common practice, no source. */
  weekFrom: (day: string) => `w/c ${day}`,
  printedSome: (count: number, left: number) =>
    `The first ${count} windows are printed. ${left} more are not on this paper: split the plan to print them.`,
  cautions: 'Cautions',
  cautionLines: cautions,
};

export type RibbonStrings = Readonly<typeof defaultStrings>;
