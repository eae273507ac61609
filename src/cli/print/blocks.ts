// The text of an answer before layout: lines, and tables whose columns depend on the screen width.

/** Rows of cells under heads. The first cell of a row names it. */
export interface TableBlock {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Names, each with its description beside it. */
export interface TermsBlock {
  readonly terms: readonly (readonly [name: string, text: string])[];
  /** Spaces before each name. */
  readonly indent?: number;
}

/** A line, a table or names. A line may be indented; its wrapped part is indented further. */
export type Block = string | TableBlock | TermsBlock;

export const table = (
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): TableBlock => ({ heads, rows });
