import type { Fault, PlanDocument, TableKind } from '../../model/index.js';
import type { DateFinding, DateOrder, Effect, Encoding, Take } from '../../tables/index.js';

/** How a file is to be read and taken, where that is not left to what is found in it. */
export interface ImportChoices {
  readonly encoding?: Encoding;
  readonly delimiter?: string;
  /** Of a workbook: the name of the sheet. Default: the first that holds a table known here. */
  readonly sheet?: string;
  /** The line, or the row of the sheet, that holds the headings. */
  readonly headingLine?: number;
  readonly dateOrder?: DateOrder;
  readonly kind?: TableKind;
  /** Field to column, as `TableText.map` has it. */
  readonly map?: Readonly<Record<string, string>>;
  /** Headings that are to stay unread, as `TableText.unread` has them. */
  readonly unread?: readonly string[];
  /** Default: replace. */
  readonly take?: Take;
  /** The file is looked at and not taken. */
  readonly leave?: boolean;
}

/** A file as it was dropped. */
export interface ImportedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Where they are given, even empty, the report tells in `preview` what else could be chosen. */
  readonly choices?: ImportChoices;
}

/** One column of a table, and the field it is read as. */
export interface ColumnPreview {
  readonly heading: string;
  /** What `ImportChoices.map` calls it. */
  readonly entry: string;
  /** Null: kept, and not read. */
  readonly field: string | null;
  /** Whether a person said that it is to stay unread. */
  readonly unread: boolean;
  /** Of a column that is not read: the fields it may hold, the likeliest first. */
  readonly suggested: readonly string[];
  /** The first cells that hold something. */
  readonly samples: readonly string[];
  /** Cells that hold something. */
  readonly filled: number;
  /** Faults of the column. */
  readonly faulty: number;
}

/** One row of a table as it was read. */
export interface RowPreview {
  readonly line: number;
  /** Index of the data row. */
  readonly row: number;
  readonly cells: readonly string[];
  readonly faults: readonly Fault[];
}

/** What was found in a table, and what each choice would touch. */
export interface ImportPreview {
  /** The choices in force, found or given. */
  readonly chosen: {
    readonly encoding: Encoding | null;
    readonly delimiter: string;
    readonly sheet: string | null;
    readonly headingLine: number;
    readonly dateOrder: DateOrder;
    readonly kind: TableKind | null;
    readonly take: Take;
    readonly leave: boolean;
  };
  /** Empty for a workbook. `lines`: how many lines read otherwise than as chosen. */
  readonly encodings: readonly { readonly encoding: Encoding; readonly lines: number }[];
  /** Empty for a workbook. `even`: how many of the first `lines` lines have as many cells as there are headings. */
  readonly delimiters: readonly {
    readonly delimiter: string;
    readonly columns: number;
    readonly lines: number;
    readonly even: number;
  }[];
  readonly sheets: readonly {
    readonly name: string;
    readonly rows: number;
    readonly hidden: boolean;
  }[];
  /** The first lines, any of which may hold the headings. */
  readonly firstLines: readonly { readonly line: number; readonly cells: readonly string[] }[];
  /** Lines above the headings, which are kept. */
  readonly above: number;
  readonly dates: DateFinding | null;
  readonly kinds: readonly {
    readonly kind: TableKind;
    readonly read: number;
    readonly missing: readonly string[];
  }[];
  readonly fields: readonly { readonly field: string; readonly needed: boolean }[];
  readonly columns: readonly ColumnPreview[];
  /** The first rows, then the first with a fault. */
  readonly rows: readonly RowPreview[];
  /** What each way of taking it would do to the table of the plan; null when nothing is taken. */
  readonly effects: Readonly<Record<Take, Effect>> | null;
  /** Cells written anew as they are taken, so that they keep their meaning beside those that stand. */
  readonly rewritten: number;
}

/** What was made of one file. */
export interface ImportReport {
  readonly file: string;
  readonly kind: TableKind | 'rules' | 'prices' | 'site' | 'decisions' | 'plan' | 'unknown';
  /** Empty for a workbook. */
  readonly encoding: string;
  readonly delimiter: string;
  readonly rows: number;
  readonly matched: readonly { readonly column: string; readonly field: string }[];
  readonly unmatched: readonly string[];
  readonly faults: readonly Fault[];
  /** Of a table, where choices were given. */
  readonly preview?: ImportPreview;
}

/** The document with what was taken of every file, and what is told of each, in the order they were given. */
export interface ImportResult {
  readonly document: PlanDocument;
  readonly report: readonly ImportReport[];
}

export type { DateFinding, DateOrder, Effect, Encoding, Take } from '../../tables/index.js';
