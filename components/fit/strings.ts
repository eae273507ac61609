import { cautions } from '../../src/model/index.js';
import { countText } from '../shared/format.js';

/** Words of the element, but for names, figures and the words of a verdict. Sentences with a figure are functions of it. */
export const defaultStrings = {
  nothing: 'Nothing to compare yet: the map needs windows and work.',
  notWorkedOut: (packages: number, windows: number) =>
    `Not worked out: ${countText(packages, 'package')} against ${countText(windows, 'window')}.`,
  key: 'Key',
  fits: 'all of it goes, usable time to spare',
  part: 'some of it goes: pieces that can be finished, or units',
  short: 'nothing of it goes for want of time;',
  near: 'shaded when by an hour or less',
  nearOnPaper: 'framed when by an hour or less',
  never: 'nothing of it goes there, however long; the reason stands in the cell',
  alone:
    'Each package on its own, required margin held; the independent check does not look at this map',
  order: 'Order of packages and windows',
  asPlanned: 'As in the plan',
  goesFirst: 'What can go first',
  byAmount: 'By how many whole packages fit, then by how much of the others goes.',
  amountsComing: 'By how many whole packages fit; how much of the others goes is being worked out.',
  tooManyPairs: (pairs: number) =>
    `By how many whole packages fit, then by how many are only short of time: how much goes is not worked out for all of ${countText(pairs, 'pair')}.`,
  map: 'Packages against windows',
  package: 'Package',
  inPieces: (time: string, pieces: number) => `${time} in ${countText(pieces, 'piece')}`,
  printedPart: (packages: number, windows: number, from: string, to: string) =>
    `On this paper: ${countText(packages, 'package')} against ${countText(windows, 'window')}, from ${from} to ${to}.`,
  leftOutWindows: (count: number) =>
    `${countText(count, 'window is', 'windows are')} left out: scroll the map to another window to print from there on.`,
  leftOutPackages: (count: number) => `${countText(count, 'package is', 'packages are')} left out.`,
  open: (count: number) =>
    `${countText(count, 'cell says', 'cells say')} only that not all of the work fits: how much does was not worked out in the time there was.`,
  /** In a cell, under a time to spare. */
  spare: 'spare',
  workingItOut: 'working it out',
  /** In a cell, the second under the first. */
  notShown: 'not shown',
  toFit: 'to fit',
  notShownToFit: 'not shown to fit',
  /** In a cell, under the time that is missing, and behind it. */
  missing: 'short',
  missingOf: (time: string) => `${time} short`,
  notRead: 'not read',
  atLeast: (amount: string) => `at least ${amount}`,
  unitsOf: (units: number, of: number) => `${units} of ${of} units`,
  piecesOf: (pieces: number, of: number) => `${pieces} of ${countText(of, 'piece')}`,
  none: 'none',
  noneFound: 'none found',
  /** Reasons in the few letters a cell has room for. */
  reason: {
    'fixed-elsewhere': 'fixed elsewhere',
    'isolation-not-booked': 'no isolation',
    'key-date': 'after key date',
    'lines-not-blocked': 'line not shut',
    'needed-before': 'needed sooner',
    'no-room': 'no room',
    'no-usable-stretch': 'broken up',
    'no-usable-time': 'nothing usable',
    'not-shown': 'not shown to fit',
    'not-before': 'too early',
    'nothing-left': 'already done',
    'rows-left-out': 'rows left out',
    'outside-extent': 'out of extent',
    'resource-not-there': 'no resource',
    'resource-short': 'resource short',
    'too-short': 'too short',
    'waits-for': 'must wait',
    'waits-for-itself': 'waits for itself',
    'not-made-good': 'not made good',
    'place-taken': 'place taken',
    'longer-than-a-shift': 'over a shift',
    'curing-not-known': 'curing not known',
    'not-cured': 'not cured',
    'left-open': 'left open',
    withdrawn: 'withdrawn',
  } as Readonly<Record<string, string>>,
  /** A reason that has no short word of its own. */
  otherReason: (code: string) => code.replaceAll('-', ' '),
  cautions: 'Cautions',
  cautionLines: cautions,
};

export type FitStrings = Readonly<typeof defaultStrings>;
