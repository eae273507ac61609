import { cellProblems } from './cell-problems.js';
import { fileProblems } from './file-problems.js';
import { headingProblems } from './heading-problems.js';
import { jsonProblems } from './json-problems.js';
import { linkProblems } from './link-problems.js';
import { rowProblems } from './row-problems.js';
import { workbookProblems } from './workbook-problems.js';

/** Words for all that can be wrong with tables and files. Whoever finds it takes only the type, and leaves the words out. */
export const tableProblems = {
  ...cellProblems,
  ...rowProblems,
  ...headingProblems,
  ...linkProblems,
  ...fileProblems,
  ...workbookProblems,
  ...jsonProblems,
};

export type TableProblems = typeof tableProblems;
export type CellProblems = typeof cellProblems;
export type RowProblems = typeof rowProblems;
export type HeadingProblems = typeof headingProblems;
export type LinkProblems = typeof linkProblems;
export type FileProblems = typeof fileProblems;
export type WorkbookProblems = typeof workbookProblems;
export type { TwiceReason } from './cell-problems.js';
export type { OtherFile } from './file-problems.js';
export type { JsonProblems } from './json-problems.js';
export type { Damage, Excess } from './workbook-problems.js';
