import { gridMove, type GridCell, type GridSize } from '../../shared/grid-keys.js';

/**
 * A block of cells, from the corner where it began to the focused cell. Positions are those on the screen, without
 * filtered rows and hidden columns.
 */
export interface Selection {
  readonly anchor: GridCell;
  readonly at: GridCell;
}

/** Both ends are included. */
export interface Block {
  readonly top: number;
  readonly bottom: number;
  readonly start: number;
  readonly end: number;
}

export const onlyCell = (at: GridCell): Selection => ({ anchor: at, at });

export function blockOf({ anchor, at }: Selection): Block {
  return {
    top: Math.min(anchor.row, at.row),
    bottom: Math.max(anchor.row, at.row),
    start: Math.min(anchor.column, at.column),
    end: Math.max(anchor.column, at.column),
  };
}

export const blockRows = (block: Block): number => block.bottom - block.top + 1;
export const blockColumns = (block: Block): number => block.end - block.start + 1;

export function holds(block: Block, row: number, column: number): boolean {
  return row >= block.top && row <= block.bottom && column >= block.start && column <= block.end;
}

/** The selection after a key; `extend` keeps the anchor. `undefined` when the key does not move it. */
export function movedBy(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>,
  from: Selection,
  size: GridSize,
  extend: boolean,
): Selection | undefined {
  const at = gridMove(event, from.at, size);
  if (!at) return undefined;
  return extend ? { anchor: from.anchor, at } : onlyCell(at);
}

/** All columns of the selected rows. The focus stays in its row. */
export function wholeRows({ anchor, at }: Selection, { columns }: GridSize): Selection {
  return {
    anchor: { row: anchor.row, column: Math.max(0, columns - 1) },
    at: { row: at.row, column: 0 },
  };
}

/** All rows of the selected columns. The focus moves to the first row, so that the block counts as whole columns. */
export function wholeColumns({ anchor, at }: Selection, { rows }: GridSize): Selection {
  return {
    anchor: { row: Math.max(0, rows - 1), column: anchor.column },
    at: { row: 0, column: at.column },
  };
}

export function everything({ rows, columns }: GridSize): Selection {
  return {
    anchor: { row: Math.max(0, rows - 1), column: Math.max(0, columns - 1) },
    at: { row: 0, column: 0 },
  };
}

/** The selection clipped to a table that may have shrunk. */
export function within({ anchor, at }: Selection, { rows, columns }: GridSize): Selection {
  const inside = (cell: GridCell): GridCell => ({
    row: Math.max(0, Math.min(rows - 1, cell.row)),
    column: Math.max(0, Math.min(columns - 1, cell.column)),
  });
  return { anchor: inside(anchor), at: inside(at) };
}
