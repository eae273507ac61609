// Words for what is wrong with a file as a whole, and lines of it. They are loaded when they are first shown.
import type { ProblemWords } from '../../model/index.js';

const fromItsSource = 'Save it again from where it came.';

const listed = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');
const counted = (count: number, thing: string): string =>
  `${count} ${thing}${count === 1 ? '' : 's'}`;

/** A file of another kind. */
export type OtherFile = keyof typeof otherFiles;
const otherFiles = {
  pdf: 'a PDF document',
  picture: 'a picture',
  'old-or-locked': 'a workbook of the older kind, or one locked with a password',
  packed: 'a packed file',
};

export const fileProblems = {
  'too-many-cells': ({
    cells,
    columns,
  }: {
    readonly cells: number;
    readonly columns: number;
  }): ProblemWords => [
    `The row has ${counted(cells, 'cell')} under ${counted(columns, 'column')}, so its cells may stand under the wrong headings.`,
    'Put a cell that holds the delimiter in double quotes.',
  ],
  'too-few-cells': ({
    cells,
    columns,
  }: {
    readonly cells: number;
    readonly columns: number;
  }): ProblemWords => [
    `The row has ${counted(cells, 'cell')} under ${counted(columns, 'column')}; those missing at its end are read as blank.`,
    'Complete the row, or leave it if the rest is meant to be blank.',
  ],
  'file-too-large': ({ mb }: { readonly mb: number }): ProblemWords => [
    `The file is larger than ${mb} MB and was not read.`,
    'Leave out rows and columns that are not needed, or give it in parts.',
  ],
  'too-many-rows': ({
    length,
    mostRows,
  }: {
    readonly length: number;
    readonly mostRows: number;
  }): ProblemWords => [
    `The table has ${length} rows; at most ${mostRows} are read.`,
    'Leave out rows that are not needed, or give it in parts.',
  ],
  'too-many-columns': ({
    line,
    length,
    mostColumns,
  }: {
    readonly line: number;
    readonly length: number;
    readonly mostColumns: number;
  }): ProblemWords => [
    `Line ${line} has ${length} cells; at most ${mostColumns} columns are read.`,
    'Leave out columns that are not needed, blank ones too. Where this is no table, give one as .xlsx or CSV.',
  ],
  'file-empty': (): ProblemWords => [
    'The file holds nothing.',
    'Give a file whose first line holds the column headings.',
  ],
  'letter-not-read': (): ProblemWords => [
    'A letter of this cell is damaged and is shown as \ufffd.',
    'Write the letter again, or save the file anew as UTF-8.',
  ],
  'quote-not-closed': (): ProblemWords => [
    'A double quote that opens a cell is never closed, so this line was not read.',
    'Close the quote at the end of its cell, or take it out.',
  ],
  'text-after-quote': (): ProblemWords => [
    'Text stands between the closing double quote of a cell and the next delimiter.',
    'Put the whole cell in quotes, and write a quote inside it twice.',
  ],
  'file-not-a-table': ({ what }: { readonly what: OtherFile }): ProblemWords => [
    `The file is ${otherFiles[what]}, which holds no table that can be read here.`,
    'Save the table as .xlsx without a password, or as CSV.',
  ],
  'file-empty/file': (): ProblemWords => ['The file is empty.', fromItsSource],
  'file-empty/workbook': (): ProblemWords => ['The workbook holds no cell.', fromItsSource],
  'table-not-recognised': ({ names }: { readonly names: readonly string[] }): ProblemWords => [
    `The headings ${listed(names)} are those of no table known here.`,
    'Head the columns as sample-csv/README.md lists them, or choose what the table holds and which column is which: a table of windows needs window, start and end; one of work needs activity and minutes or units.',
  ],
  'formulas-unguarded': ({ count }: { readonly count: number }): ProblemWords => [
    `${count} ${count === 1 ? 'cell begins' : 'cells begin'} as a formula does and ${count === 1 ? 'is' : 'are'} written without a guard: a program that opens the file may run them.`,
    'Save with the guard, or as a workbook, unless the file goes to a program that runs no formulas.',
  ],
  'cell-too-long-for-workbook': ({
    length,
    longest,
  }: {
    readonly length: number;
    readonly longest: number;
  }): ProblemWords => [
    `The cell holds ${length} characters; programs that open workbooks take at most ${longest}.`,
    'Shorten it, or save the table as CSV.',
  ],
};
