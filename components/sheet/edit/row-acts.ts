import { blockRows } from '../grid/selection.js';
import type { SheetState } from '../sheet-state.js';
import { emptyRows, freeHeading, renamedColumn, withoutColumn } from './table-edits.js';
import { applySteps } from '../../../src/plan/apply-steps.js';
import { orderWithoutRows, orderWithRows } from '../grid/view-order.js';

/** Adds empty rows above or below the selected rows, as many as are selected. */
export function addRows(sheet: SheetState, where: 'above' | 'below'): void {
  const { block, table, words } = sheet;
  const count = sheet.size.rows === 0 ? 1 : blockRows(block);
  const place = sheet.size.rows === 0 ? 0 : where === 'above' ? block.top : block.bottom + 1;
  const beside = sheet.fileRow(where === 'above' ? block.top : block.bottom);
  const wished = beside < 0 ? table.rows.length : where === 'above' ? beside : beside + 1;
  const at = Math.min(wished, table.rows.length);
  sheet.change([emptyRows(table, at, count)], words.rowsInserted(count), {
    order: sheet.order && orderWithRows(sheet.order, at, count, place),
    selection: {
      anchor: { row: place + count - 1, column: sheet.at.column },
      at: { row: place, column: sheet.at.column },
    },
  });
}

/** Removes the selected rows, hidden columns included. */
export function removeRows(sheet: SheetState): void {
  if (sheet.size.rows === 0) return;
  const { block, words } = sheet;
  const rows: number[] = [];
  for (let place = block.top; place <= block.bottom; place += 1) rows.push(sheet.fileRow(place));
  const at = { row: block.top, column: sheet.at.column };
  sheet.change([{ removeRows: rows }], words.rowsDeleted(rows.length), {
    order: sheet.order && orderWithoutRows(sheet.order, rows),
    selection: { anchor: at, at },
  });
}

/** Adds an empty column beside the focused one. Returns its position on the screen. */
export function addColumn(sheet: SheetState, where: 'before' | 'after'): number {
  const { table, words } = sheet;
  const beside = sheet.fileColumn(sheet.at.column);
  const at =
    beside < 0 || beside >= table.columns.length
      ? table.columns.length
      : where === 'before'
        ? beside
        : beside + 1;
  const heading = freeHeading(table.columns, words.newColumn);
  sheet.change([{ addColumn: heading, at }], words.columnInserted(heading));
  const column = sheet.columns.shown.indexOf(at);
  const cell = { row: sheet.at.row, column };
  sheet.selection = { anchor: cell, at: cell };
  return column;
}

export function removeColumns(sheet: SheetState): void {
  const { block, words } = sheet;
  const columns: number[] = [];
  for (let place = block.start; place <= block.end; place += 1)
    if (!sheet.resultOf(sheet.fileColumn(place))) columns.push(sheet.fileColumn(place));
  const steps = columns.toReversed().flatMap((column, k, all) =>
    withoutColumn(
      applySteps(
        sheet.table,
        all.slice(0, k).map((gone) => ({ removeColumn: gone })),
      ),
      column,
    ),
  );
  const at = { row: sheet.at.row, column: block.start };
  const named = columns.map((column) => sheet.table.columns[column] ?? '').join(', ');
  sheet.change(steps, words.columnsDeleted(columns.length, named), {
    selection: { anchor: at, at },
  });
}

/** Renames a column. An empty or duplicate heading is refused with a message. */
export function nameColumn(sheet: SheetState, column: number, heading: string): void {
  const { table, words } = sheet;
  const name = heading.trim();
  const old = table.columns[column] ?? '';
  if (name === old) return;
  const others = table.columns.toSpliced(column, 1).map((text) => text.toLowerCase());
  if (name === '') sheet.announcement = words.headingEmpty;
  else if (others.includes(name.toLowerCase())) sheet.announcement = words.headingTaken(name);
  else sheet.change(renamedColumn(table, column, name), words.columnRenamed(old, name));
}

export function hideColumns(sheet: SheetState): void {
  const { block, words } = sheet;
  const columns = sheet.columns.shown.slice(block.start, block.end + 1);
  const done = sheet.columns.hide(columns);
  sheet.announcement = done ? words.columnsHidden(columns.length) : words.cannotHideAll;
  const column = Math.min(block.start, sheet.size.columns - 1);
  const at = { row: sheet.at.row, column };
  if (done) sheet.selection = { anchor: at, at };
}

export function showColumns(sheet: SheetState): void {
  const count = sheet.columns.hiddenCount;
  const column = sheet.fileColumn(sheet.at.column);
  sheet.columns.showAll();
  const at = { row: sheet.at.row, column: Math.max(0, sheet.columns.shown.indexOf(column)) };
  sheet.selection = { anchor: at, at };
  sheet.announcement = sheet.words.columnsShown(count);
}

/** Makes the selected columns wider or narrower by some pixels. */
export function widenColumns(sheet: SheetState, by: number): void {
  const { block, columns, words } = sheet;
  for (const column of columns.shown.slice(block.start, block.end + 1))
    columns.resize(column, columns.widths[column]! + by);
  sheet.announcement = words.width(columns.widths[sheet.fileColumn(sheet.at.column)] ?? 0);
}

export function fitColumns(sheet: SheetState): void {
  const { block, columns, words, table } = sheet;
  for (const column of columns.shown.slice(block.start, block.end + 1)) columns.fit(column, table);
  sheet.announcement = words.width(columns.widths[sheet.fileColumn(sheet.at.column)] ?? 0);
}
