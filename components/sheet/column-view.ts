import type { TableText } from '../../src/model/index.js';
import { columnWidths, isFigures } from './sheet-layout.js';
import type { ViewWish } from './view-order.js';

export const NARROWEST = 40;
export const WIDEST = 800;

/** Tells columns of one heading apart by which of them they are. */
function namesOf(columns: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return columns.map((heading) => {
    const nth = seen.get(heading) ?? 0;
    seen.set(heading, nth + 1);
    return `${nth} ${heading}`;
  });
}

/** Which columns are shown, how wide, and which hold figures. What a person chose is kept by the column's name. */
export class ColumnView {
  /** Indexes in the table of the columns shown. */
  shown: readonly number[] = [];
  /** Pixels for every column of the table. */
  widths: readonly number[] = [];
  figures: readonly boolean[] = [];
  #names: readonly string[] = [];
  #fitting: readonly number[] = [];
  readonly #chosen = new Map<string, number>();
  readonly #hidden = new Set<string>();

  forget(): void {
    this.#chosen.clear();
    this.#hidden.clear();
    this.#names = [];
  }

  /** Takes other columns in. Returns the wish for the view with its columns where they are now; lost ones are dropped. */
  read(table: TableText, before: TableText, wish: ViewWish): ViewWish {
    const old = namesOf(before.columns);
    const names = namesOf(table.columns);
    const renamed =
      old.length === names.length
        ? old.flatMap((name, at) => (name === names[at] ? [] : [at]))
        : [];
    if (renamed.length === 1) this.#carry(old[renamed[0]!]!, names[renamed[0]!]!);
    this.#names = names;
    this.#fitting = columnWidths(table);
    this.figures = table.columns.map((_, column) => isFigures(table, column));
    this.#measure();
    const to = (column: number): number =>
      renamed.length === 1 && renamed[0] === column ? column : names.indexOf(old[column] ?? '');
    const { sort } = wish;
    return {
      ...wish,
      sort: sort && to(sort.column) >= 0 ? { ...sort, column: to(sort.column) } : undefined,
      filters: wish.filters
        .map((one) => ({ ...one, column: to(one.column) }))
        .filter((one) => one.column >= 0),
    };
  }

  get hiddenCount(): number {
    return this.#names.length - this.shown.length;
  }

  /** Hides columns, but never all of them. */
  hide(columns: readonly number[]): boolean {
    if (columns.length >= this.shown.length) return false;
    for (const column of columns) this.#hidden.add(this.#names[column]!);
    this.#measure();
    return true;
  }

  showAll(): void {
    this.#hidden.clear();
    this.#measure();
  }

  reveal(column: number): void {
    if (this.#hidden.delete(this.#names[column] ?? '')) this.#measure();
  }

  resize(column: number, pixels: number): void {
    const width = Math.round(Math.min(WIDEST, Math.max(NARROWEST, pixels)));
    this.#chosen.set(this.#names[column]!, width);
    this.#measure();
  }

  /** As wide as what it holds needs. */
  fit(column: number, table: TableText): void {
    this.#fitting = columnWidths(table);
    this.#chosen.delete(this.#names[column]!);
    this.#measure();
  }

  #carry(from: string, to: string): void {
    const width = this.#chosen.get(from);
    if (width !== undefined) this.#chosen.set(to, width);
    this.#chosen.delete(from);
    if (this.#hidden.delete(from)) this.#hidden.add(to);
  }

  #measure(): void {
    this.widths = this.#names.map((name, at) => this.#chosen.get(name) ?? this.#fitting[at]!);
    this.shown = this.#names.flatMap((name, at) => (this.#hidden.has(name) ? [] : [at]));
  }
}
