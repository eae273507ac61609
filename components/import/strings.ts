import type { Encoding, Take } from '../../src/engine/types.js';
import type { TableKind } from '../../src/model/index.js';

/** Every word of the choices before a file is taken. Sentences with a figure are functions of its text. */
export const defaultStrings = {
  kinds: {
    windows: 'windows',
    work: 'work',
    resources: 'resources',
    trains: 'trains',
    roster: 'a roster of turns',
    temperatures: 'temperatures',
    forecast: 'a weather forecast',
    plant: 'noise of plant',
    rules: 'a rule set',
    prices: 'a price book',
    plan: 'a whole plan',
    unknown: 'not recognised',
  } as Readonly<Record<TableKind | 'rules' | 'prices' | 'plan' | 'unknown', string>>,
  reading: 'Reading',
  stop: 'Stop reading',
  failed: (why: string) => `Could not be read: ${why}`,
  how: 'How it is read',
  kind: 'This is a table of',
  choose: 'choose',
  encoding: 'Letters are written in',
  encodings: {
    'utf-8': 'UTF-8',
    'utf-8-bom': 'UTF-8 with a mark',
    'utf-16le': 'UTF-16, low byte first',
    'utf-16be': 'UTF-16, high byte first',
    'windows-1252': 'Windows-1252',
  } as Readonly<Record<Encoding, string>>,
  linesDiffer: (lines: string) => `${lines} read otherwise`,
  delimiter: 'Cells are parted by',
  delimiters: { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar' } as Readonly<
    Record<string, string>
  >,
  columnsEven: (columns: string, even: string, lines: string) =>
    `${columns}, even in ${even} of ${lines} lines`,
  sheet: 'Sheet',
  hidden: 'hidden',
  headings: 'Headings stand on',
  line: (line: string, cells: string) => `line ${line}: ${cells}`,
  above: (lines: string) => `Kept and written back: ${lines} above.`,
  dates: 'Dates such as 03/04/2027 are',
  dayFirst: 'day, then month',
  monthFirst: 'month, then day',
  datesSettled: (rows: string) => `${rows} can be read this way only.`,
  datesUsual: 'No date settles it; day first is usual here.',
  datesTurn: (rows: string) => `${rows} would mean another day the other way round.`,
  datesPlain: 'Every date can be read one way only.',
  datesAgainst: (rows: string) => `${rows} cannot be read this way.`,
  columns: 'Columns',
  heading: 'Heading',
  holds: 'Read as',
  first: 'First cells',
  filledHead: 'Filled',
  noHeading: 'no heading',
  kept: 'kept, not read',
  needs: 'needed',
  missing: (fields: string) => `No column holds ${fields}.`,
  faultsIn: (count: string) => `${count} with a fault`,
  rows: 'First rows, and rows with faults',
  lineHead: 'Line',
  into: 'Into the plan',
  takes: {
    replace: 'Replace the table',
    append: 'Add to the end',
    update: 'Bring up to date by name',
  } as Readonly<Record<Take, string>>,
  leave: 'Leave this file out',
  firstTable: (rows: string) => `adds ${rows}`,
  replaces: (rows: string, removed: string) =>
    `replaces ${rows}; ${removed} of them not in the file`,
  adds: (rows: string, twice: string) => `adds ${rows}; ${twice} would bear a name that stands`,
  updates: (changed: string, added: string, same: string) =>
    `changes ${changed}, adds ${added}, leaves ${same} as they are; deletes nothing`,
  rewritten: (cells: string) =>
    `${cells} are written year first, or with their unit, so that they mean the same beside the rows that stand.`,
  remembered: 'Read as you chose for these headings before.',
};

export type ImportStrings = Readonly<typeof defaultStrings>;
