/** A document to be sent: facts, tables and lists in the order in which they are read. Every cell is text. */
export interface Report {
  readonly title: string;
  /** File name without its ending. */
  readonly fileName: string;
  readonly facts: readonly ReportFact[];
  readonly tables: readonly ReportTable[];
  readonly lists: readonly { readonly title: string; readonly items: readonly string[] }[];
  readonly cautions: readonly string[];
}

export interface ReportFact {
  readonly label: string;
  readonly value: string;
}

/** Rows are as long as `columns`. The columns named in `figures` hold numbers. */
export interface ReportTable {
  readonly title: string;
  readonly columns: readonly string[];
  readonly figures: readonly number[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * A report as one table for CSV or a workbook: each row begins with the part of the report that it belongs to. A part
 * that has headings of its own repeats them in its first row.
 */
export function tableOfReport(report: Report): {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
} {
  const [main, ...others] = report.tables;
  const columns = ['part', ...(main?.columns ?? ['what', 'value'])];
  const wide = Math.max(3, columns.length, ...others.map((one) => one.columns.length + 1));
  const full = (cells: readonly string[]): readonly string[] => [
    ...cells,
    ...new Array<string>(wide - cells.length).fill(''),
  ];
  const rows = [
    ...report.facts.map((one) => [report.title, one.label, one.value]),
    ...(main?.rows ?? []).map((row) => [main!.title, ...row]),
    ...others.flatMap((table) => [
      [table.title, ...table.columns],
      ...table.rows.map((row) => [table.title, ...row]),
    ]),
    ...report.lists.flatMap((list) => list.items.map((item) => [list.title, item])),
    ...report.cautions.map((one) => ['Caution', one]),
  ];
  return { columns: full(columns), rows: rows.map(full) };
}
