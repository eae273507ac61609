import type { TableText } from '../../src/model/index.js';

export interface SortBy {
  /** Index of the column. */
  readonly column: number;
  readonly down: boolean;
}

export interface Filter {
  readonly column: number;
  /** Rows stay whose cell holds this text, capitals or not. */
  readonly text: string;
}

export interface ViewWish {
  readonly sort?: SortBy | undefined;
  readonly filters: readonly Filter[];
  readonly onlyFaults: boolean;
}

export const asInTheFile: ViewWish = { filters: [], onlyFaults: false };

const collator = new Intl.Collator(undefined, { numeric: true });
const plainNumber = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/;

/**
 * Indexes of the rows to show, in their order; `null` when that is every row as in the file. Sorting is stable:
 * numbers by value and before texts, texts as the reader's language has them, empty cells last both ways.
 */
export function viewOrder(
  table: TableText,
  wish: ViewWish,
  isFaulty: (row: number) => boolean,
): number[] | null {
  const { sort, onlyFaults } = wish;
  const filters = wish.filters.map((one) => ({ ...one, text: one.text.toLowerCase() }));
  if (!sort && filters.length === 0 && !onlyFaults) return null;
  const rows: number[] = [];
  for (const [index, row] of table.rows.entries()) {
    if (onlyFaults && !isFaulty(index)) continue;
    if (filters.every(({ column, text }) => (row[column] ?? '').toLowerCase().includes(text)))
      rows.push(index);
  }
  return sort ? sorted(table, rows, sort) : rows;
}

function sorted(table: TableText, rows: readonly number[], { column, down }: SortBy): number[] {
  const keys = rows.map((row) => keyOf(table.rows[row]?.[column] ?? ''));
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

/** The order after rows were put in: they show where they were asked for, whatever filter is on. */
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
