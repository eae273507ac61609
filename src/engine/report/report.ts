import type { Phrase } from '../../model/index.js';
import type { ResultTable } from '../../tables/write/export-tables.js';

/**
 * A document to be sent: facts, tables and lists in the order in which they are read. Every cell is text, or a sentence that is
 * text once it is said in some language.
 */
export interface Report<Text extends Phrase = Phrase> {
  readonly title: Text;
  /** File name without its ending. */
  readonly fileName: Text;
  readonly facts: readonly ReportFact<Text>[];
  readonly tables: readonly ReportTable<Text>[];
  readonly lists: readonly { readonly title: Text; readonly items: readonly Text[] }[];
  readonly cautions: readonly Text[];
}

export interface ReportFact<Text extends Phrase = Phrase> {
  readonly label: Text;
  readonly value: Text;
}

/** Rows are as long as `columns`. The columns named in `figures` hold numbers. */
export interface ReportTable<Text extends Phrase = Phrase> {
  readonly title: Text;
  readonly columns: readonly Text[];
  readonly figures: readonly number[];
  /** Columns whose cells stay on one line of paper. */
  readonly unbroken?: readonly number[];
  readonly rows: readonly (readonly Text[])[];
}

/**
 * A report as a table to be saved. CSV has it whole, each row begun with the part of the report that it belongs to; a part
 * with headings of its own repeats them in its first row. A workbook has a sheet for what is said and one for each table,
 * with figures as numbers.
 */
export function tableOfReport(report: Report<string>): ResultTable {
  const [main, ...others] = report.tables;
  const columns = ['part', ...(main?.columns ?? ['what', 'value'])];
  const wide = Math.max(3, columns.length, ...others.map((other) => other.columns.length + 1));
  const full = (cells: readonly string[]): readonly string[] => [
    ...cells,
    ...new Array<string>(wide - cells.length).fill(''),
  ];
  const rows = [
    ...report.facts.map((fact) => [report.title, fact.label, fact.value]),
    ...(main?.rows ?? []).map((row) => [main!.title, ...row]),
    ...others.flatMap((table) => [
      [table.title, ...table.columns],
      ...table.rows.map((row) => [table.title, ...row]),
    ]),
    ...saidIn(report).map(([part, text]) => [part, text]),
  ];
  return {
    name: report.fileName,
    columns: full(columns),
    rows: rows.map(full),
    sheets: [
      {
        name: 'Report',
        columns: ['part', 'what', 'value'],
        rows: [
          ...report.facts.map((fact) => [report.title, fact.label, fact.value]),
          ...saidIn(report).map(([part, text]) => [part, text, '']),
        ],
      },
      ...report.tables.map((table) => ({
        name: table.title,
        columns: table.columns,
        rows: table.rows.map((row) =>
          row.map((cell, i) => (table.figures.includes(i) ? figureOf(cell) : cell)),
        ),
      })),
    ],
  };
}

/** Lists and cautions, each text with the part it stands in. */
const saidIn = (report: Report<string>): readonly (readonly [part: string, text: string])[] => [
  ...report.lists.flatMap((list) => list.items.map((item) => [list.title, item] as const)),
  ...report.cautions.map((caution) => ['Caution', caution] as const),
];

/** A figure as a number; what is none stays as it is. */
const figureOf = (cell: string): string | number =>
  /^-?\d{1,15}(\.\d{1,4})?$/.test(cell) ? Number(cell) : cell;
