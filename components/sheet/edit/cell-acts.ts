import { looksLikeHeadings } from './clipboard.js';
import { blockColumns, blockRows, type Block } from '../grid/selection.js';
import { continued, daysLater } from './series.js';
import type { SheetState } from '../sheet-state.js';
import type { CellText, TableStep } from '../../../src/plan/change.js';
import { freeHeading } from './table-edits.js';

/** Sets cells of the view by a rule. Returns how many of them there are. */
function cellsOf(
  sheet: SheetState,
  block: Block,
  text: (row: number, column: number) => string,
): CellText[] {
  const cells: CellText[] = [];
  for (let row = block.top; row <= block.bottom; row += 1)
    for (let column = block.start; column <= block.end; column += 1)
      if (!sheet.resultOf(sheet.fileColumn(column)))
        cells.push({
          row: sheet.fileRow(row),
          column: sheet.fileColumn(column),
          text: text(row, column),
        });
  return cells;
}

function isEmptySheet({ size }: SheetState): boolean {
  return size.rows === 0 || size.columns === 0;
}

/** Writes the typed text to a cell. */
export function typeCell(sheet: SheetState, row: number, column: number, text: string): void {
  const cell = { row, column, text };
  const heading = sheet.table.columns[column] ?? '';
  sheet.change([{ cells: [cell] }], sheet.words.typed(heading, sheet.lines.of(row)));
}

export function clearCells(sheet: SheetState): void {
  if (isEmptySheet(sheet)) return;
  const cells = cellsOf(sheet, sheet.block, () => '');
  sheet.change([{ cells }], sheet.words.cleared(cells.length));
}

/** Texts of the selected cells, row by row. */
export function selectedCells(sheet: SheetState): string[][] {
  if (isEmptySheet(sheet)) return [];
  const { top, bottom, start, end } = sheet.block;
  sheet.copied = sheet.columns.shown
    .slice(start, end + 1)
    .map((column) => sheet.resultOf(column) !== undefined);
  return Array.from({ length: bottom - top + 1 }, (_, down) =>
    Array.from({ length: end - start + 1 }, (__, along) => sheet.cell(top + down, start + along)),
  );
}

/** Copies the first row of the block over the rest; for a single row, the row above over it. */
export function fillDown(sheet: SheetState): void {
  const { block, words } = sheet;
  const from = blockRows(block) > 1 ? block.top : block.top - 1;
  fill(
    sheet,
    { ...block, top: from + 1 },
    from >= 0,
    (_, column) => sheet.cell(from, column),
    words.nothingAbove,
  );
}

/** Copies the first column of the block over the rest; for a single column, the one before over it. */
export function fillAcross(sheet: SheetState): void {
  const { block, words } = sheet;
  const from = blockColumns(block) > 1 ? block.start : block.start - 1;
  fill(
    sheet,
    { ...block, start: from + 1 },
    from >= 0,
    (row) => sheet.cell(row, from),
    words.nothingBefore,
  );
}

function fill(
  sheet: SheetState,
  over: Block,
  possible: boolean,
  text: (row: number, column: number) => string,
  refusal: string,
): void {
  if (!possible || isEmptySheet(sheet)) {
    sheet.announcement = refusal;
    return;
  }
  const cells = cellsOf(sheet, over, text);
  sheet.change([{ cells }], sheet.words.filled(cells.length));
}

/** Repeats the contents of block `from` over the larger block `over`. */
export function repeatOver(sheet: SheetState, from: Block, over: Block): void {
  if (isEmptySheet(sheet)) return;
  const turn = (place: number, first: number, size: number): number =>
    first + ((((place - first) % size) + size) % size);
  const cells = cellsOf(sheet, over, (row, column) =>
    sheet.cell(turn(row, from.top, blockRows(from)), turn(column, from.start, blockColumns(from))),
  );
  sheet.change(
    [{ cells }],
    sheet.words.filled(cells.length - blockRows(from) * blockColumns(from)),
    {
      selection: {
        anchor: { row: over.top, column: over.start },
        at: { row: over.bottom, column: over.end },
      },
    },
  );
}

/** Continues the series at the top of each column of the block, if its step is clear. */
export function continueSeries(sheet: SheetState): void {
  continueColumns(sheet, (seeds, count) => continued(seeds, count), sheet.words.noSeries);
}

/** Continues each column of the block from the last date at its top, by a day or a week. */
export function continueDates(sheet: SheetState, days: number): void {
  continueColumns(
    sheet,
    (seeds, count) => {
      const last = seeds.at(-1) ?? '';
      const dates = Array.from({ length: count }, (_, at) => daysLater(last, days * (at + 1)));
      return dates.every((date) => date !== undefined) ? dates : undefined;
    },
    sheet.words.noDate,
  );
}

function continueColumns(
  sheet: SheetState,
  next: (seeds: readonly string[], count: number) => readonly string[] | undefined,
  refusal: string,
): void {
  const { block } = sheet;
  const cells: CellText[] = [];
  for (let column = block.start; column <= block.end && !isEmptySheet(sheet); column += 1) {
    if (sheet.resultOf(sheet.fileColumn(column))) continue;
    const seeds: string[] = [];
    let row = block.top;
    while (row <= block.bottom && sheet.cell(row, column) !== '') {
      seeds.push(sheet.cell(row, column));
      row += 1;
    }
    const first = row;
    const texts = next(seeds, block.bottom - first + 1) ?? [];
    for (const [index, text] of texts.entries())
      cells.push({
        row: sheet.fileRow(first + index),
        column: sheet.fileColumn(column),
        text,
      });
  }
  if (cells.length === 0) {
    sheet.announcement = refusal;
    return;
  }
  sheet.change([{ cells }], sheet.words.continued(cells.length));
}

const holdsColumn = ({ start, end }: Block, place: number): boolean =>
  place >= start && place <= end;

/**
 * Pasted cells, from the first cell of the block on. One cell fills the block, and a block that is a whole number of
 * times as large is tiled; rows beyond the last and columns beyond the last are added, so that nothing is lost.
 */
export function pasteCells(sheet: SheetState, given: readonly (readonly string[])[]): void {
  const pasted = sheet.withoutResults(given);
  const height = pasted.length;
  const width = pasted[0]?.length ?? 0;
  if (height === 0 || width === 0) return;
  const { words } = sheet;
  if (sheet.table.columns.length === 0) {
    startTable(sheet, pasted);
    return;
  }
  const { block, typedShown } = sheet;
  const { shown } = sheet.columns;
  // Skips calculated columns: positions from here on count typed columns only.
  const start = typedShown.findIndex((value) => shown.indexOf(value) >= block.start);
  if (start < 0) {
    sheet.announcement = words.workedOutCell;
    return;
  }
  const typedIn = typedShown.filter((value) => holdsColumn(block, shown.indexOf(value))).length;
  const tiles =
    blockRows(block) % height === 0 && typedIn > 0 && typedIn % width === 0 && sheet.size.rows > 0;
  const bottom = block.top + (tiles ? blockRows(block) : height) - 1;
  const end = start + (tiles ? typedIn : width) - 1;
  const { rows: shownRows } = sheet.size;
  const shownColumns = typedShown.length;
  const headingsNow = [...sheet.table.columns];
  const steps: TableStep[] = [];
  const columns = [...typedShown];
  while (columns.length <= end) {
    const heading = freeHeading(headingsNow, words.newColumn);
    columns.push(headingsNow.length);
    steps.push({ addColumn: heading, at: headingsNow.length });
    headingsNow.push(heading);
  }
  const moreRows = Math.max(0, bottom + 1 - shownRows);
  const rowAt = (place: number): number =>
    place < shownRows ? sheet.fileRow(place) : sheet.table.rows.length + place - shownRows;
  const cells: CellText[] = [];
  for (let row = block.top; row <= bottom; row += 1)
    for (let column = start; column <= end; column += 1)
      cells.push({
        row: rowAt(row),
        column: columns[column]!,
        text: pasted[(row - block.top) % height]![(column - start) % width]!,
      });
  const headings = columns.slice(start).map((column) => sheet.table.columns[column] ?? '');
  const label = words.pasted(cells.length);
  const notices = [
    label,
    ...(moreRows > 0 ? [words.rowsAdded(moreRows)] : []),
    ...(end >= shownColumns ? [words.columnsAdded(end + 1 - shownColumns)] : []),
    ...(looksLikeHeadings(pasted[0]!, headings) ? [words.headingsPasted] : []),
  ].join('. ');
  const order =
    sheet.order && moreRows > 0
      ? [
          ...sheet.order,
          ...Array.from({ length: moreRows }, (_, at) => sheet.table.rows.length + at),
        ]
      : undefined;
  sheet.change([...steps, { cells }], label, {
    notice: notices,
    ...(order !== undefined && { order }),
    selection: {
      anchor: {
        row: bottom,
        column:
          end < shownColumns ? shown.indexOf(columns[end]!) : shown.length + end - shownColumns,
      },
      at: { row: block.top, column: shown.indexOf(columns[start]!) },
    },
  });
}

/** A table without columns takes its headings from the first pasted row. */
function startTable(
  sheet: SheetState,
  [headings = [], ...rows]: readonly (readonly string[])[],
): void {
  const columns = headings.reduce<string[]>(
    (made, heading) => [...made, freeHeading(made, heading.trim() || sheet.words.newColumn)],
    [],
  );
  const label = sheet.words.pasted(headings.length * (rows.length + 1));
  const given = columns.map((heading, at): TableStep => ({ addColumn: heading, at }));
  const gone = sheet.table.rows.map((_, row) => row);
  sheet.change([{ removeRows: gone }, ...given, { addRows: rows, at: 0 }], label, {
    notice: `${label}. ${sheet.words.headingsTaken}`,
  });
}
