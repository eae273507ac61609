import type { TableKind } from './empty-plan.js';
import type { Worded } from './sentence.js';

/** Something that an answer assumes because nobody said it. Every answer shows its notes. */
export interface Note extends Worded {
  /** kebab-case, stable. */
  readonly code: string;
}

/** Cells that a note is about. */
export interface NotePlace {
  readonly table: TableKind;
  /** As the file heads it; our own heading where the table has no such column. */
  readonly column?: string;
  /** Indexes of the data rows, 0 for the first. Empty: the heading, or the table as a whole. */
  readonly rows: readonly number[];
}

/** A note on what a plan was read as. */
export interface PlanNote extends Note {
  /** How many rows, names or headings it is about. */
  readonly count: number;
  readonly places: readonly NotePlace[];
}
