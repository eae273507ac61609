export interface GridCell {
  readonly row: number;
  readonly column: number;
}

export interface GridSize {
  readonly rows: number;
  readonly columns: number;
  /** Rows a page key moves by. */
  readonly page?: number;
}

type KeyOnly = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>;

/**
 * Where a key takes the focus in a grid, by the ARIA grid pattern; `undefined` when the key is none of the grid's.
 * @see ARIA Authoring Practices Guide, W3C, "Grid (Interactive Tabular Data and Layout Containers) Pattern" (from memory).
 */
export function gridMove(event: KeyOnly, at: GridCell, size: GridSize): GridCell | undefined {
  if (event.altKey || size.rows === 0 || size.columns === 0) return undefined;
  const lastRow = size.rows - 1;
  const lastColumn = size.columns - 1;
  const page = size.page ?? 10;
  const far = event.ctrlKey || event.metaKey;
  const to = (row: number, column: number): GridCell => ({
    row: Math.min(lastRow, Math.max(0, row)),
    column: Math.min(lastColumn, Math.max(0, column)),
  });
  switch (event.key) {
    case 'ArrowUp':
      return to(far ? 0 : at.row - 1, at.column);
    case 'ArrowDown':
      return to(far ? lastRow : at.row + 1, at.column);
    case 'ArrowLeft':
      return to(at.row, far ? 0 : at.column - 1);
    case 'ArrowRight':
      return to(at.row, far ? lastColumn : at.column + 1);
    case 'Home':
      return to(far ? 0 : at.row, 0);
    case 'End':
      return to(far ? lastRow : at.row, lastColumn);
    case 'PageUp':
      return to(at.row - page, at.column);
    case 'PageDown':
      return to(at.row + page, at.column);
    default:
      return undefined;
  }
}

const sides: Readonly<Record<string, string>> = {
  ArrowLeft: 'ArrowRight',
  ArrowRight: 'ArrowLeft',
};

/** The key as `gridMove` wants it: left and right mean the sides of the screen, also where rows run from right to left. */
export function turnedKey(event: KeyOnly, grid: Element): KeyOnly {
  const { key, ctrlKey, metaKey, altKey } = event;
  const rtl = key in sides && getComputedStyle(grid).direction === 'rtl';
  return { key: rtl ? sides[key]! : key, ctrlKey, metaKey, altKey };
}
