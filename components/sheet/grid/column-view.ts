import type { TableText } from '../../../src/model/index.js';
import { columnWidths, isFigures, LETTER } from './sheet-layout.js';
import { resultValue, type ResultColumn } from '../result-column.js';
import type { ViewWish } from './view-order.js';

export const NARROWEST = 40;
export const WIDEST = 800;

/** Unique names for columns, also when headings repeat. */
function namesOf(columns: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return columns.map((heading) => {
    const nth = seen.get(heading) ?? 0;
    seen.set(heading, nth + 1);
    return `${nth} ${heading}`;
  });
}

const nameOfResult = ({ id }: Pick<ResultColumn, 'id'>): string => `result ${id}`;

/** Limits for finding the columns that identify a row: rows and leading columns examined, and the share of rows they must distinguish. */
const NAMED = 500;
const LEADING = 3;
const TELLING = 0.9;

/** How many leading columns identify a row: up to the first that distinguishes nearly all rows; 1 when none does. */
function namingColumns({ columns, rows }: TableText): number {
  const some = rows.slice(0, NAMED);
  for (let at = 0; at < Math.min(LEADING, columns.length); at += 1) {
    const names = new Set(some.map((cells) => cells[at]?.trim() ?? ''));
    names.delete('');
    if (some.length > 0 && names.size >= TELLING * some.length) return at + 1;
  }
  return 1;
}

/** Rows measured for the width of a result column. */
const MEASURED = 60;

function widthOfResult(column: ResultColumn, table: TableText): number {
  let longest = column.heading.length + 3;
  for (const [row, cells] of table.rows.slice(0, MEASURED).entries()) {
    const { text, tone } = resultValue(column.value(row, cells));
    // Harm is shown in bold, which is wider.
    longest = Math.max(longest, text.length * (tone === 'harm' ? 1.1 : 1));
  }
  return Math.round(Math.min(240, Math.max(64, longest * LETTER + 24)));
}

/** Which columns are shown, their widths, and which hold figures. A person's choices are stored by column name. */
export class ColumnView {
  /**
   * Indexes of the shown columns in screen order: table columns first, then one index for each result column. Result
   * columns are placed beside the columns that identify a row.
   */
  shown: readonly number[] = [];
  /** Result columns in the given order. */
  results: readonly ResultColumn[] = [];
  /** Pixels for every column. */
  widths: readonly number[] = [];
  figures: readonly boolean[] = [];
  #names: readonly string[] = [];
  #naming = 1;
  #fitting: readonly number[] = [];
  readonly #chosen = new Map<string, number>();
  readonly #hidden = new Set<string>();
  /** Names of result columns in the chosen order; others follow. */
  #resultOrder: readonly string[] = [];

  forget(): void {
    this.#chosen.clear();
    this.#hidden.clear();
    this.#names = [];
  }

  /** Sets the columns. Returns the requested sort and filters with updated column indexes; those of removed columns are dropped. */
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

  /** Fits the width of a column to its contents. */
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

  /** All columns in screen order, hidden ones included. */
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

  /** Ids of the shown result columns, in order. */
  get resultsShown(): readonly string[] {
    const typed = this.#names.length - this.results.length;
    return this.shown.filter((at) => at >= typed).map((at) => this.results[at - typed]!.id);
  }

  /** Shows these result columns in this order and hides the others. */
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
