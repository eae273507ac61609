import type { Fault } from '../model/index.js';

/** What was made of one row. */
export interface MadeRow<T> {
  readonly value: T;
  readonly index: number;
  readonly line: number;
  /** Whether the row has an error, so that nothing can be made of it. */
  readonly bad: boolean;
  readonly faults: readonly Fault[];
}

/** Which orders of day and month the dates of a row leave open. */
export interface RowDates {
  readonly dayFirstOnly: boolean;
  readonly monthFirstOnly: boolean;
}

/**
 * What was made of the rows of a table, by the very arrays of their cells: a row that is the same array as before is
 * not read again. For tables whose rows are never changed in place.
 */
export class RowMemory<T> {
  #rows = new WeakMap<readonly string[], MadeRow<T>>();
  #dates = new WeakMap<readonly string[], RowDates>();
  #rowsKey = '';
  #datesKey = '';

  /** What is kept of rows read in a given way; what was made in any other way is forgotten. */
  rows(key: string): WeakMap<readonly string[], MadeRow<T>> {
    if (key !== this.#rowsKey) this.#rows = new WeakMap();
    this.#rowsKey = key;
    return this.#rows;
  }

  /** The same of what the dates of rows say. */
  dates(key: string): WeakMap<readonly string[], RowDates> {
    if (key !== this.#datesKey) this.#dates = new WeakMap();
    this.#datesKey = key;
    return this.#dates;
  }
}

/** What was made of a row, for the place it has now. */
export function movedTo<T>(made: MadeRow<T>, index: number, line: number): MadeRow<T> {
  if (made.index === index && made.line === line) return made;
  return {
    ...made,
    index,
    line,
    faults: made.faults.map((fault) => ({ ...fault, row: index, line })),
  };
}
