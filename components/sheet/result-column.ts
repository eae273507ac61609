/** What a result column holds for one row. */
export interface ResultValue {
  readonly text: string;
  /** What to sort by, where that is not the text: minutes, an instant. */
  readonly sort?: number;
  /** `harm` for what must not be missed, `quiet` for what is not known yet; a word says the same. */
  readonly tone?: 'harm' | 'quiet';
}

/** A column that is worked out from the rows and stands beside those that are typed. It is never written to the table. */
export interface ResultColumn {
  readonly id: string;
  readonly heading: string;
  /** The language of the heading; English where nothing is said. */
  readonly lang?: string;
  /** Figures are set flush at their last digit. */
  readonly figures?: boolean;
  /** `row`: index of the row in the table; `cells`: what is typed in it. Called for the rows in sight, and for all to sort or filter. */
  value(row: number, cells: readonly string[]): ResultValue | string;
}

export const nothingKnown: ResultValue = { text: '' };

export const resultValue = (value: ResultValue | string): ResultValue =>
  typeof value === 'string' ? { text: value } : value;
