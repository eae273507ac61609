import {
  tableIn,
  tableKinds,
  type Fault,
  type PlanDocument,
  type TableKind,
  type TableText,
} from '../../model/index.js';
import { looksLikeFormula } from './guard.js';
import type { SheetOut } from '../workbook/write-workbook.js';
import { writeCsv, type Cell } from './write-csv.js';
import { problemOf } from '../parse/parsed.js';

export const exportFormats = ['csv', 'xlsx'] as const;
export type ExportFormat = (typeof exportFormats)[number];

/** A file to be saved. */
export interface ExportedFile {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
  /** What whoever opens it elsewhere should know. */
  readonly faults: readonly Fault[];
}

/** A table of results, or of anything else. Text is written as text, numbers as numbers. */
export interface ResultTable {
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** In a workbook these stand in its place, a sheet each; a CSV file has the table itself. */
  readonly sheets?: readonly Omit<ResultTable, 'sheets'>[];
}

export interface ExportOptions {
  readonly format: ExportFormat;
  /** Default: every table with headings. */
  readonly tables?: readonly TableKind[];
  /** CSV only: cells that begin a formula are written as they are, for programs that run none. */
  readonly raw?: boolean;
}

/**
 * A table as a file: CSV (UTF-8, RFC 4180, guarded against formulas) or a workbook of its sheets, or of itself.
 *
 * @throws {RangeError} When a number is not finite or the table is larger than a sheet.
 */
export async function exportTable(table: ResultTable, format: ExportFormat): Promise<ExportedFile> {
  return format === 'csv'
    ? csvFile(`${fileStem(table.name)}.csv`, [table.columns, ...table.rows], false)
    : workbookFile(`${fileStem(table.name)}.xlsx`, table.sheets ?? [table]);
}

/**
 * Several tables as one workbook, a sheet each.
 *
 * @throws {RangeError} As `exportTable` does, and when there is no table.
 */
export async function exportWorkbook(
  name: string,
  tables: readonly ResultTable[],
): Promise<ExportedFile> {
  return workbookFile(`${fileStem(name)}.xlsx`, tables);
}

/**
 * The tables of a plan as files, a CSV file each or one workbook. Reading them back gives every cell, those under
 * headings that nobody reads too; a workbook does not keep blank cells at the end of a row.
 */
export async function exportTables(
  document: PlanDocument,
  options: ExportOptions,
): Promise<ExportedFile[]> {
  const kinds = (options.tables ?? tableKinds).filter(
    (kind) => tableIn(document, kind).columns.length > 0,
  );
  if (kinds.length === 0) return [];
  if (options.format === 'csv') {
    const names = uniqueNames(kinds.map((kind) => csvName(kind, tableIn(document, kind))));
    return kinds.map((kind, at) => {
      const { above = [], columns, rows } = tableIn(document, kind);
      return csvFile(names[at]!, [...above, columns, ...rows], options.raw ?? false);
    });
  }
  const sheets = kinds.map((kind): SheetOut => {
    const { above = [], columns, rows } = tableIn(document, kind);
    return { name: kind, above, columns, rows: rows.map((row) => row.map(typed)) };
  });
  return [await workbookFile(`${fileStem(document.name)}.xlsx`, sheets)];
}

/** A number that is written the one way numbers are shown becomes a number, so that it can be summed elsewhere. */
function typed(cell: string): Cell {
  const plain = /^(?:0|-?[1-9]\d{0,14})$|^-?(?:0|[1-9]\d{0,7})\.\d{0,6}[1-9]$/.test(cell);
  return plain ? Number(cell) : cell;
}

function csvFile(name: string, lines: readonly (readonly Cell[])[], raw: boolean): ExportedFile {
  // A line of no cells would be a blank line, which is no row.
  const [first = [], ...rest] = lines.map((line) => (line.length === 0 ? [''] : line));
  const text = writeCsv(
    first.map((cell) => String(cell ?? '')),
    rest,
    { guard: !raw },
  );
  // Programs that open a file by its look need the mark to read £ as £.
  const marked = /[^\0-\x7f]/.test(text) ? `\uFEFF${text}` : text;
  const faults = raw ? rawFaults(name, lines) : [];
  return {
    name,
    mediaType: 'text/csv;charset=utf-8',
    bytes: new TextEncoder().encode(marked),
    faults,
  };
}

function rawFaults(name: string, lines: readonly (readonly Cell[])[]): Fault[] {
  const count = lines.reduce(
    (sum, line) =>
      sum + line.filter((cell) => typeof cell === 'string' && looksLikeFormula(cell)).length,
    0,
  );
  if (count === 0) return [];
  return [{ ...problemOf('formulas-unguarded', { count }), severity: 'warning', file: name }];
}

/** Workbooks are written by a part of the program that is loaded when the first is asked for. */
async function workbookFile(name: string, sheets: readonly SheetOut[]): Promise<ExportedFile> {
  const { sheetLimits, workbookOf } = await import('../workbook/write-workbook.js');
  const mediaType = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
  const faults = sheets.flatMap((sheet) => longFaults(name, sheet, sheetLimits.cellLength));
  return { name, mediaType, bytes: workbookOf(sheets), faults };
}

/** Cells that other programs refuse for their length. They are written whole. */
function longFaults(
  name: string,
  { name: sheet, columns, rows, above = [] }: SheetOut,
  longest: number,
): Fault[] {
  return [columns, ...rows].flatMap((cells, at) =>
    cells.flatMap((cell, column): Fault[] =>
      typeof cell !== 'string' || cell.length <= longest
        ? []
        : [
            {
              ...problemOf('cell-too-long-for-workbook', { length: cell.length, longest }),
              severity: 'warning',
              file: `${name}, sheet ${sheet}`,
              line: above.length + at + 1,
              column: columns[column] ?? '',
            },
          ],
    ),
  );
}

function csvName(kind: TableKind, { file }: TableText): string {
  const stem = /^(.+)\.(?:csv|tsv|txt)$/i.exec(file)?.[1];
  return `${stem === undefined ? kind : fileStem(stem)}.csv`;
}

/** A name that any system takes for a file. */
export function fileStem(name: string): string {
  const tidy = name
    .replace(/[\\/:*?"<>|\p{C}]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^\.+|(?<!\.)\.+$/g, '')
    .slice(0, 100)
    .trim();
  return tidy === '' ? 'plan' : tidy;
}

function uniqueNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let given = name;
    for (let copy = 2; taken.has(given.toLowerCase()); copy += 1)
      given = name.replace(/\.csv$/, ` ${copy}.csv`);
    taken.add(given.toLowerCase());
    return given;
  });
}
