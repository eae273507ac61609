import type { Told } from '../../model/index.js';

/**
 * A document to be sent: facts, tables and lists in the order in which they are read. Every cell is text, or a sentence that is
 * text once it is said in some language.
 */
export interface Report<Text extends Told = Told> {
  readonly title: Text;
  /** File name without its ending. */
  readonly fileName: Text;
  readonly facts: readonly ReportFact<Text>[];
  readonly tables: readonly ReportTable<Text>[];
  readonly lists: readonly { readonly title: Text; readonly items: readonly Text[] }[];
  readonly cautions: readonly Text[];
}

export interface ReportFact<Text extends Told = Told> {
  readonly label: Text;
  readonly value: Text;
}

/** Rows are as long as `columns`. The columns named in `figures` hold numbers. */
export interface ReportTable<Text extends Told = Told> {
  readonly title: Text;
  readonly columns: readonly Text[];
  readonly figures: readonly number[];
  /** Columns whose cells stay on one line of paper. */
  readonly unbroken?: readonly number[];
  readonly rows: readonly (readonly Text[])[];
}
