import type { GridCell } from '../../shared/grid-keys.js';

/** Cells of a view that contain a text, ignoring case, in reading order. `cell` returns the text at a position. */
export function findCells(
  text: string,
  rows: number,
  columns: number,
  cell: (row: number, column: number) => string,
): GridCell[] {
  const wanted = text.toLowerCase();
  const found: GridCell[] = [];
  if (wanted === '') return found;
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1)
      if (cell(row, column).toLowerCase().includes(wanted)) found.push({ row, column });
  return found;
}

/** Index of the next match after (or before) a cell, wrapping around; -1 when there are no matches. */
export function nextFound(found: readonly GridCell[], from: GridCell, step: 1 | -1): number {
  if (found.length === 0) return -1;
  const after = (cell: GridCell): boolean =>
    cell.row > from.row || (cell.row === from.row && cell.column > from.column);
  const here = (cell: GridCell): boolean => cell.row === from.row && cell.column === from.column;
  if (step === 1) return Math.max(0, found.findIndex(after));
  const before = found.findLastIndex((cell) => !after(cell) && !here(cell));
  return before === -1 ? found.length - 1 : before;
}
