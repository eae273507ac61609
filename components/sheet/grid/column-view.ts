import type { TableText } from '../../../src/model/index.js';
import { columnWidths, isFigures, LETTER } from './sheet-layout.js';
import { resultValue, type ResultColumn } from '../result-column.js';
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

const nameOfResult = ({ id }: Pick<ResultColumn, 'id'>): string => `result ${id}`;

/** Rows and leading columns looked at for what names a row, and the share of rows that it must tell apart. */
const NAMED = 500;
const LEADING = 3;
const TELLING = 0.9;

/** How many leading columns name a row: up to the first that tells nearly all of them apart; one, where none does. */
function namingColumns({ columns, rows }: TableText): number {
  const some = rows.slice(0, NAMED);
  for (let at = 0; at < Math.min(LEADING, columns.length); at += 1) {
    const names = new Set(some.map((cells) => cells[at]?.trim() ?? ''));
    names.delete('');
    if (some.length > 0 && names.size >= TELLING * some.length) return at + 1;
  }
  return 1;
}

/** Rows by which the width of a result column is judged. */
const MEASURED = 60;

function widthOfResult(column: ResultColumn, table: TableText): number {
  let longest = column.heading.length + 3;
  for (const [row, cells] of table.rows.slice(0, MEASURED).entries()) {
    const { text, tone } = resultValue(column.value(row, cells));
    // What tells of harm is bold, and wider for it.
    longest = Math.max(longest, text.length * (tone === 'harm' ? 1.1 : 1));
  }
  return Math.round(Math.min(240, Math.max(64, longest * LETTER + 24)));
}

/** Which columns are shown, how wide, and which hold figures. What a person chose is kept by the column's name. */
export class ColumnView {
  /**
   * Indexes of the columns shown, in their order on the screen: those of the table, and after the last of these one for
   * each result column. Results stand beside the columns that name a row.
   */
  shown: readonly number[] = [];
  /** Result columns in the order they were given. */
  results: readonly ResultColumn[] = [];
  /** Pixels for every column. */
  widths: readonly number[] = [];
  figures: readonly boolean[] = [];
  #names: readonly string[] = [];
  #naming = 1;
  #fitting: readonly number[] = [];
  readonly #chosen = new Map<string, number>();
  readonly #hidden = new Set<string>();
  /** Names of result columns in the order a person wants; those not in it follow. */
  #resultOrder: readonly string[] = [];

  forget(): void {
    this.#chosen.clear();
    this.#hidden.clear();
    this.#names = [];
  }

  /** Takes other columns in. Returns the wish for the view with its columns where they are now; lost ones are dropped. */
  read(table: TableText, before: TableText, wish: ViewWish, results = this.results): ViewWish {
    const old = namesOf(before.columns);
    const names = namesOf(table.columns);
    const oldAll = [...old, ...this.results.map(nameOfResult)];
    const all = [...names, ...results.map(nameOfResult)];
    this.results = results;
    const renamed =
      old.length === names.length
        ? old.flatMap((name, at) => (name === names[at] ? [] : [at]))
        : [];
    if (renamed.length === 1) this.#carry(old[renamed[0]!]!, names[renamed[0]!]!);
    // Typing in a cell never moves a column.
    const isNew = this.#names.length === 0 || before.rows.length === 0;
    if (isNew || old.join('\n') !== names.join('\n')) this.#naming = namingColumns(table);
    this.#names = all;
    this.#fitting = this.#widthsFor(table);
    this.figures = [
      ...table.columns.map((_, column) => isFigures(table, column)),
      ...results.map((result) => result.figures === true),
    ];
    this.#measure();
    const to = (column: number): number =>
      renamed.length === 1 && renamed[0] === column ? column : all.indexOf(oldAll[column] ?? '');
    const { sort } = wish;
    return {
      ...wish,
      sort: sort && to(sort.column) >= 0 ? { ...sort, column: to(sort.column) } : undefined,
      filters: wish.filters
        .map((filter) => ({ ...filter, column: to(filter.column) }))
        .filter((item) => item.column >= 0),
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
    this.#fitting = this.#widthsFor(table);
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
    this.shown = this.order.filter((at) => !this.#hidden.has(this.#names[at]!));
  }

  /** Every column in the order of the screen, hidden ones too. */
  get order(): readonly number[] {
    const typed = this.#names.length - this.results.length;
    const places = [...this.#names.keys()];
    const rank = (name: string): number => {
      const at = this.#resultOrder.indexOf(name);
      return at < 0 ? Infinity : at;
    };
    const results = places
      .slice(typed)
      .sort((a, b) =>
        rank(this.#names[a]!) < rank(this.#names[b]!)
          ? -1
          : rank(this.#names[a]!) > rank(this.#names[b]!)
            ? 1
            : a - b,
      );
    const naming = Math.min(this.#naming, typed);
    return [...places.slice(0, naming), ...results, ...places.slice(naming, typed)];
  }

  /** Ids of the result columns shown, in order. */
  get resultsShown(): readonly string[] {
    const typed = this.#names.length - this.results.length;
    return this.shown.filter((at) => at >= typed).map((at) => this.results[at - typed]!.id);
  }

  /** Result columns as they are to stand, and which of them; others stay out of sight. */
  showResults(ids: readonly string[]): void {
    this.#resultOrder = ids.map((id) => nameOfResult({ id }));
    for (const result of this.results) {
      const name = nameOfResult(result);
      if (ids.includes(result.id)) this.#hidden.delete(name);
      else this.#hidden.add(name);
    }
    this.#measure();
  }

  #widthsFor(table: TableText): readonly number[] {
    return [...columnWidths(table), ...this.results.map((result) => widthOfResult(result, table))];
  }
}
