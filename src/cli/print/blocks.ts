// The text of an answer before it is laid out: lines, and what the width of the screen decides the columns of.

/** Rows of cells under heads. The first cell of a row names it. */
export interface TableBlock {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Names, each with what is said of it beside it. */
export interface TermsBlock {
  readonly terms: readonly (readonly [name: string, text: string])[];
  /** Blanks before each name. */
  readonly indent?: number;
}

/** A line, a table or names. A line may be indented; what is wrapped of it stands further in. */
export type Block = string | TableBlock | TermsBlock;

export const table = (
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): TableBlock => ({ heads, rows });
