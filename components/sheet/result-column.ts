/** The value of a result column for a row. */
export interface ResultValue {
  readonly text: string;
  /** Sort key, if not the text: minutes, an instant. */
  readonly sort?: number;
  /** `harm`: must not be missed; `quiet`: not known yet. The text says the same. */
  readonly tone?: 'harm' | 'quiet';
}

/** A column calculated from the rows and shown beside the typed ones. It is never written to the table. */
export interface ResultColumn {
  readonly id: string;
  readonly heading: string;
  /** Language of the heading; English by default. */
  readonly lang?: string;
  /** Whether it holds figures, which are right-aligned. */
  readonly figures?: boolean;
  /** `row`: index of the row in the table; `cells`: its typed texts. Called for the visible rows, and for all rows to sort or filter. */
  value(row: number, cells: readonly string[]): ResultValue | string;
}

export const nothingKnown: ResultValue = { text: '' };

export const resultValue = (value: ResultValue | string): ResultValue =>
  typeof value === 'string' ? { text: value } : value;
