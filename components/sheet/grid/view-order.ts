import type { TableText } from '../../../src/model/index.js';

export interface SortBy {
  /** Index of the column. */
  readonly column: number;
  readonly down: boolean;
}

export interface Filter {
  readonly column: number;
  /** Shows rows whose cell contains this text, ignoring case. */
  readonly text: string;
}

export interface ViewWish {
  readonly sort?: SortBy | undefined;
  readonly filters: readonly Filter[];
  readonly onlyFaults: boolean;
}

export const asInTheFile: ViewWish = { filters: [], onlyFaults: false };

/** Contents of cells, by row and column of the file. */
export interface Cells {
  readonly text: (row: number, column: number) => string;
  /** Sort key to use instead of the text. */
  readonly key: (row: number, column: number) => number | undefined;
}

const typedCells = (table: TableText): Cells => ({
  text: (row, column) => table.rows[row]?.[column] ?? '',
  key: () => undefined,
});

const collator = new Intl.Collator(undefined, { numeric: true });
const plainNumber = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/;

/**
 * Indexes of the rows to show, in order; `null` when all rows are shown in file order. Sorting is stable: numbers by
 * value and before texts, texts by the reader's language, empty cells last in both directions.
 */
export function viewOrder(
  table: TableText,
  wish: ViewWish,
  isFaulty: (row: number) => boolean,
  cells: Cells = typedCells(table),
): number[] | null {
  const { sort, onlyFaults } = wish;
  const filters = wish.filters.map((filter) => ({ ...filter, text: filter.text.toLowerCase() }));
  if (!sort && filters.length === 0 && !onlyFaults) return null;
  const rows: number[] = [];
  for (let index = 0; index < table.rows.length; index += 1) {
    if (onlyFaults && !isFaulty(index)) continue;
    if (filters.every(({ column, text }) => cells.text(index, column).toLowerCase().includes(text)))
      rows.push(index);
  }
  return sort ? sorted(cells, rows, sort) : rows;
}

function sorted(cells: Cells, rows: readonly number[], { column, down }: SortBy): number[] {
  const keys = rows.map((row) => cells.key(row, column) ?? keyOf(cells.text(row, column)));
  const order = rows.map((_, place) => place);
  order.sort((a, b) => compared(keys[a]!, keys[b]!, down) || a - b);
  return order.map((place) => rows[place]!);
}

type Key = number | string;

function keyOf(cell: string): Key {
  const text = cell.trim();
  return plainNumber.test(text) ? Number(text) : text;
}

function compared(a: Key, b: Key, down: boolean): number {
  if (a === '' || b === '') return Number(a === '') - Number(b === '');
  const up =
    typeof a === 'number'
      ? typeof b === 'number'
        ? a - b
        : -1
      : typeof b === 'number'
        ? 1
        : collator.compare(a, b);
  return down ? -up : up;
}

/** The order after rows were inserted: they are shown where they were inserted, despite filters. */
export function orderWithRows(
  order: readonly number[],
  at: number,
  count: number,
  place: number,
): number[] {
  const moved = order.map((row) => (row >= at ? row + count : row));
  moved.splice(place, 0, ...Array.from({ length: count }, (_, index) => at + index));
  return moved;
}

export function orderWithoutRows(order: readonly number[], rows: readonly number[]): number[] {
  const gone = [...rows].sort((a, b) => a - b);
  const isGone = new Set(gone);
  return order.filter((row) => !isGone.has(row)).map((row) => row - countBelow(gone, row));
}

function countBelow(sortedRows: readonly number[], row: number): number {
  let low = 0;
  let high = sortedRows.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sortedRows[middle]! < row) low = middle + 1;
    else high = middle;
  }
  return low;
}
