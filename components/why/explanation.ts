import type { TableKind } from '../../src/model/index.js';
import type { LedgerKind } from '../../src/rules/types.js';

/** Somewhere in the plan that a reader can be taken to. */
export type Place =
  | { readonly to: 'window'; readonly id: string }
  | { readonly to: 'package'; readonly id: string }
  | { readonly to: 'activity'; readonly id: string }
  /** A step, a time without work or the margin in the rules, by its name. */
  | { readonly to: 'rule'; readonly id: string }
  | { readonly to: 'fit'; readonly package: string; readonly window: string }
  | {
      readonly to: 'cell';
      readonly table: TableKind;
      readonly row: number;
      readonly column?: string;
    };

export interface ExplanationRow {
  readonly label: string;
  readonly figure: string;
  readonly note?: string;
  readonly kind?: LedgerKind;
  readonly place?: Place;
  /** The row the figure asked about comes from, or the sum. */
  readonly strong?: boolean;
}

/** A number with where it comes from: the sentence, the rows it is made of, the rule and the cells behind it. */
export interface Explanation {
  /** Language of its words, a tag of BCP 47; absent: English, as those of this package are. */
  readonly lang?: string;
  /** What the number is of: `Usable time, window W3`. */
  readonly title: string;
  readonly figure: string;
  /** `good` and `bad` add a word, never a colour alone. */
  readonly tone?: 'good' | 'bad';
  readonly sentence: string;
  /** Heading of the rows; `What it is made of` when absent. */
  readonly rowsTitle?: string;
  readonly rows: readonly ExplanationRow[];
  readonly rule?: { readonly name: string; readonly text: string; readonly source: string };
  readonly links: readonly { readonly text: string; readonly place: Place }[];
}
