import { zipSync } from 'fflate';
import type { readXlsx } from 'hucre/xlsx';
import type { Fault, Problem } from '../../model/index.js';
import { faultAt } from '../text/place.js';
import type { RecordFault, Records } from '../text/records.js';
import { ArchiveRefused, unpack } from './archive.js';
import { cellText, type DaySystem } from './cell-text.js';
import { problemOf } from '../parse/parsed.js';

/** One sheet of a workbook as text: the rows that hold something; `line` is the row's number in the sheet. */
export interface WorkbookSheet extends Records {
  readonly name: string;
  readonly hidden: boolean;
}

/** A workbook's sheets, or why it cannot be read. */
export interface WorkbookResult {
  readonly sheets: readonly WorkbookSheet[];
  readonly faults: readonly Fault[];
}

/** The parts that hold tables. Pictures, links, macros and everything else stay packed. */
const tableParts =
  /^(?:\[Content_Types\]\.xml|_rels\/\.rels|xl\/(?:[\w-]+\.xml|_rels\/[\w-]+\.xml\.rels|worksheets\/[\w -]+\.xml))$/;

/**
 * Reads the sheets of an .xlsx workbook as text: stored values of formulas, local times, no styles. Never throws for a
 * bad file. The reader is loaded when the first workbook comes.
 */
export async function readWorkbook(bytes: Uint8Array): Promise<WorkbookResult> {
  try {
    const parts = unpack(bytes, (name) => tableParts.test(name));
    refuseDeclarations(parts);
    // Packed anew, so that the reader sees the checked parts and no others.
    const checked = zipSync(Object.fromEntries(parts), { level: 0 });
    const reader = await import('hucre/xlsx');
    const book = await reader.readXlsx(checked, { readStyles: true });
    const system: DaySystem = book.dateSystem ?? '1900';
    return { sheets: book.sheets.map((sheet) => sheetText(sheet, system)), faults: [] };
  } catch (error) {
    return { sheets: [], faults: [refusal(error)] };
  }
}

type Book = Awaited<ReturnType<typeof readXlsx>>;
type Sheet = Book['sheets'][number];

function sheetText(sheet: Sheet, system: DaySystem): WorkbookSheet {
  const notices: SheetNotice[] = [];
  const grid = sheet.rows.map((cells, row) =>
    cells.map((value, column) => {
      const cell = sheet.cells?.get(`${row},${column}`);
      const problem = problemOfCell(value, cell);
      if (problem) {
        const fault = faultAt({ line: row + 1 }, 'warning', problem, String(value ?? ''));
        notices.push({ row, column, fault });
      }
      return cellText({ value, format: cell?.style?.numFmt }, system);
    }),
  );
  notices.push(...fillMerged(sheet, grid));
  const width = grid.reduce((most, cells) => Math.max(most, lengthOf(cells)), 0);
  const rows = grid.flatMap((cells, row) =>
    lengthOf(cells) === 0
      ? []
      : [{ cells: Array.from({ length: width }, (_, at) => cells[at] ?? ''), line: row + 1 }],
  );
  const recordOf = new Map(rows.map((row, record) => [row.line, record]));
  const faults = notices.flatMap(({ row, column, fault }): RecordFault[] => {
    const record = recordOf.get(row + 1);
    return record === undefined ? [] : [{ record, column, fault }];
  });
  const hidden = sheet.hidden === true || sheet.veryHidden === true;
  return { name: sheet.name, hidden, delimiter: '', rows, faults };
}

interface SheetNotice {
  readonly row: number;
  readonly column: number;
  readonly fault: Fault;
}

/** How many cells there are up to the last that holds something. */
function lengthOf(cells: readonly string[]): number {
  let length = cells.length;
  while (length > 0 && cells[length - 1] === '') length -= 1;
  return length;
}

type Cell = NonNullable<Sheet['cells']> extends Map<string, infer C> ? C : never;

function problemOfCell(value: unknown, cell: Cell | undefined): Problem | undefined {
  if (cell?.type === 'error') {
    return problemOf('cell-in-error', { value: String(value) });
  }
  if (cell?.formula !== undefined && (value === null || value === '')) {
    return problemOf('formula-without-value');
  }
  return undefined;
}

/** One value written over several rows is the value of each of them. Over several columns it stays in the first. */
function fillMerged(sheet: Sheet, grid: string[][]): SheetNotice[] {
  return (sheet.merges ?? []).flatMap(({ startRow, endRow, startCol, endCol }) => {
    const value = grid[startRow]?.[startCol] ?? '';
    if (value === '' || endRow === startRow || endCol !== startCol) return [];
    for (let row = startRow + 1; row <= Math.min(endRow, grid.length - 1); row += 1) {
      const cells = grid[row]!;
      while (cells.length <= startCol) cells.push('');
      cells[startCol] = value;
    }
    const problem = problemOf('cells-merged', {
      value: value.slice(0, 60),
      first: startRow + 1,
      last: endRow + 1,
    });
    const fault = faultAt({ line: startRow + 1 }, 'warning', problem);
    return [{ row: startRow, column: startCol, fault }];
  });
}

/** A part may declare nothing of its own: that is how small files are made to grow and how files ask for others. */
function refuseDeclarations(parts: ReadonlyMap<string, Uint8Array>): void {
  for (const [name, bytes] of parts) {
    const text = new TextDecoder().decode(bytes);
    if (/<!(?:DOCTYPE|ENTITY)/i.test(text) || text.includes('\0')) {
      throw new ArchiveRefused(problemOf('workbook-refused', { part: name }));
    }
  }
}

function refusal(error: unknown): Fault {
  const problem =
    error instanceof ArchiveRefused
      ? error.problem
      : problemOf('workbook-not-read', {
          trouble: error instanceof Error ? error.message.slice(0, 200) : 'unknown',
        });
  const { line: _line, ...fault } = faultAt({ line: 1 }, 'error', problem);
  return fault;
}
