// Words for what is wrong with a workbook, and cells of it. They are loaded when they are first shown.
import type { ProblemWords } from '../../model/index.js';

const saveAgain = 'Save it again as .xlsx, or save the sheet as CSV.';

/** What is wrong with the archive that a workbook is. */
export type Damage = keyof typeof damages;
const damages = {
  'list-missing': () => 'its list of parts is missing',
  'list-broken': () => 'its list of parts breaks off',
  'part-twice': (part: string) => `it holds "${part}" twice`,
  'part-missing': (part: string) => `its part "${part}" is not where the list says`,
  'part-broken': (part: string) => `its part "${part}" breaks off`,
  'part-altered': (part: string) => `its part "${part}" does not match its checksum`,
  'part-length': (part: string) => `its part "${part}" is longer or shorter than it says`,
  'part-packing': (part: string) => `its part "${part}" is packed in a way not known here`,
  'part-unpacked': (part: string) => `its part "${part}" cannot be unpacked`,
  'part-longer': (part: string) => `its part "${part}" holds more than it says`,
};

/** What there is too much of: parts, or megabytes of one or of all. */
export type Excess =
  | { readonly parts: number }
  | { readonly mb: number; readonly part?: string; readonly fromKb?: number };

function excessText(what: Excess): string {
  if ('parts' in what) return `it holds ${what.parts} parts`;
  const { part, mb, fromKb } = what;
  const whole = part === undefined ? 'it' : `its part "${part}"`;
  return `${whole} unpacks to ${mb} MB${fromKb === undefined ? '' : ` from ${fromKb} kB`}`;
}

export const workbookProblems = {
  'cell-in-error': ({ value }: { readonly value: string }): ProblemWords => [
    `The workbook shows the error ${value} in this cell; it is kept as text.`,
    'Mend it in the workbook, or type the value.',
  ],
  'formula-without-value': (): ProblemWords => [
    'The cell holds a formula whose value the workbook did not store, so it is blank here.',
    'Open and save the workbook where it was made, or type the value.',
  ],
  'cells-merged': ({
    value,
    first,
    last,
  }: {
    readonly value: string;
    readonly first: number;
    readonly last: number;
  }): ProblemWords => [
    `"${value}" is written once over rows ${first} to ${last}; each of them is given it.`,
    'Check that it holds for every row.',
  ],
  'workbook-not-read': ({ trouble }: { readonly trouble: string }): ProblemWords => [
    `The file is not a workbook that can be read here (${trouble}).`,
    saveAgain,
  ],
  'workbook-damaged': ({
    what,
    part,
  }: {
    readonly what: Damage;
    readonly part: string;
  }): ProblemWords => [`The file is not a whole workbook: ${damages[what](part)}.`, saveAgain],
  'workbook-locked': (): ProblemWords => [
    'The workbook is locked with a password.',
    'Save it without the password, or save the sheet as CSV.',
  ],
  'workbook-too-large': ({ what }: { readonly what: Excess }): ProblemWords => [
    `The workbook is not opened: ${excessText(what)}, more than a workbook of tables needs.`,
    'Keep only the sheets that are needed, or save the sheet as CSV.',
  ],
  'workbook-refused': ({ part }: { readonly part: string }): ProblemWords => [
    `The part "${part}" of the workbook holds a declaration that no table needs.`,
    'Save it again as .xlsx where it was made, or save the sheet as CSV.',
  ],
};
