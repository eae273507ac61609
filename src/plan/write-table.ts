// Puts what was done to a table into the doc. Inside a transaction.
import type * as Y from 'yjs';
import type { TableText } from '../model/index.js';
import {
  cellAddress,
  fieldAddress,
  fieldGroup,
  headAddress,
  rowGroup,
  tableAddress,
} from './address.js';
import type { CellText, Row, TableStep } from './change.js';
import type { Registers, Said } from './registers.js';
import { addedKey, orderName, type Ids, type TableState } from './table-state.js';

/** What writing needs of the plan. */
export interface Writing {
  readonly doc: Y.Doc;
  readonly registers: Registers;
  readonly said: Said;
  /** Ids that nobody else gives out, one after the other. */
  readonly freshIds: (count: number) => number;
}

/**
 * Makes the steps in the table. `seen`: which rows and columns the maker saw at which place.
 *
 * Returns what stands at each place after the steps, as the maker sees it. Throws `RangeError` for a place that the
 * table does not have; then part of the steps may be made.
 */
export function writeSteps(
  state: TableState,
  seen: Ids,
  steps: readonly TableStep[],
  writing: Writing,
): Ids {
  const writer = new TableWriter(state, seen, writing);
  for (const step of steps) writer.step(step);
  return writer.seen;
}

/** Takes a table in place of another, or away. */
export function writeTable(
  name: string,
  before: TableState | undefined,
  whole: TableText | undefined,
  { doc, registers, said, freshIds }: Writing,
): void {
  if (before) forgetTable(before.id, doc, registers);
  const id = freshIds(1).toString(36);
  registers.set(tableAddress(name), whole, said, id);
  if (!whole) return;
  doc.getArray<number>(orderName(id, 'rows')).insert(0, counted(whole.rows.length));
  doc.getArray<number>(orderName(id, 'columns')).insert(0, counted(whole.columns.length));
}

/** What was typed into the table before goes with it; what others type into it meanwhile is then seen to be left over. */
function forgetTable(id: string, doc: Y.Doc, registers: Registers): void {
  for (const group of [...registers.groups()])
    if (group.startsWith(`c/${id}/`)) registers.clearGroup(group);
  registers.clearGroup(fieldGroup(id));
  const added = doc.getMap('added');
  for (const key of [...added.keys()]) if (key.startsWith(`${id}/`)) added.delete(key);
}

const counted = (count: number): number[] => Array.from({ length: count }, (_, at) => at);

class TableWriter {
  seen: Ids;
  readonly #state: TableState;
  readonly #writing: Writing;

  constructor(state: TableState, seen: Ids, writing: Writing) {
    this.#state = state;
    this.seen = seen;
    this.#writing = writing;
  }

  step(step: TableStep): void {
    if ('cells' in step) this.#setCells(step.cells);
    else if ('addRows' in step) this.#addRows(step.addRows, step.at);
    else if ('removeRows' in step) this.#removeRows(step.removeRows);
    else if ('moveRows' in step) this.#moveRows(step.moveRows, step.to);
    else if ('addColumn' in step) this.#addColumn(step.addColumn, step.at, step.fill ?? false);
    else if ('removeColumn' in step) this.#removeColumn(step.removeColumn);
    else if ('heading' in step) {
      const column = idAt(this.seen.columns, step.column, 'column');
      this.#set(headAddress(this.#table, column), step.heading);
    } else this.#set(fieldAddress(this.#table, [step.field]), step.value);
  }

  get #table(): string {
    return this.seen.table;
  }

  #set(address: string, value: unknown): void {
    this.#writing.registers.set(address, value, this.#writing.said);
  }

  #setCells(cells: readonly CellText[]): void {
    const needed = cells.reduce((most, { row }) => Math.max(most, row + 1), 0);
    const missing = needed - this.seen.rows.length;
    if (missing > 0)
      this.#addRows(
        Array.from({ length: missing }, () => []),
        this.seen.rows.length,
      );
    for (const { row, column, text } of cells) {
      const at = idAt(this.seen.rows, row, 'row');
      const along = idAt(this.seen.columns, column, 'column');
      const address = cellAddress(this.#table, at, along);
      // Where two values stand aside of each other, typing the first again settles it.
      const settled = this.#writing.registers.entries(address).length < 2;
      if (settled && (this.#state.cell(at, along) ?? '') === text) continue;
      this.#set(address, text);
    }
  }

  #addRows(rows: readonly Row[], at: number): void {
    checkPlace(at, this.seen.rows.length, 'row');
    if (rows.length === 0) return;
    const first = this.#writing.freshIds(rows.length);
    const ids = rows.map((_, k) => first + k);
    const added = this.#writing.doc.getMap('added');
    for (const [k, row] of rows.entries())
      added.set(addedKey(this.#table, 'row', ids[k]!), [[...this.seen.columns], [...row]]);
    this.#insert(this.#state.rows, this.seen.rows, at, ids);
    this.seen = { ...this.seen, rows: this.seen.rows.toSpliced(at, 0, ...ids) };
  }

  #removeRows(places: readonly number[]): void {
    const gone = new Set(places.map((place) => idAt(this.seen.rows, place, 'row')));
    removeFrom(this.#state.rows, gone);
    for (const id of gone) this.#writing.registers.clearGroup(rowGroup(this.#table, id));
    this.seen = { ...this.seen, rows: this.seen.rows.filter((id) => !gone.has(id)) };
  }

  #moveRows(places: readonly number[], to: number): void {
    checkPlace(to, this.seen.rows.length, 'row');
    const moved = new Set(places.map((place) => idAt(this.seen.rows, place, 'row')));
    // A row that another person took away meanwhile stays away.
    const there = new Set(this.#state.rows.toArray());
    const before = this.seen.rows.slice(0, to).filter((id) => !moved.has(id));
    const after = this.seen.rows.slice(to).filter((id) => !moved.has(id));
    removeFrom(this.#state.rows, moved);
    const left = [...before, ...after];
    this.#insert(
      this.#state.rows,
      left,
      before.length,
      [...moved].filter((id) => there.has(id)),
    );
    this.seen = { ...this.seen, rows: [...before, ...moved, ...after] };
  }

  #addColumn(heading: string, at: number, fill: boolean): void {
    checkPlace(at, this.seen.columns.length, 'column');
    const id = this.#writing.freshIds(1);
    this.#writing.doc.getMap('added').set(addedKey(this.#table, 'column', id), [heading, fill]);
    this.#insert(this.#state.columns, this.seen.columns, at, [id]);
    this.seen = { ...this.seen, columns: this.seen.columns.toSpliced(at, 0, id) };
  }

  #removeColumn(place: number): void {
    const id = idAt(this.seen.columns, place, 'column');
    removeFrom(this.#state.columns, new Set([id]));
    const { registers } = this.#writing;
    const name = id.toString(36);
    for (const group of [...registers.groups()])
      if (group.startsWith(`c/${this.#table}/`) && registers.group(group).has(name))
        registers.clear(`${group}/${name}`);
    this.seen = { ...this.seen, columns: this.seen.columns.toSpliced(place, 1) };
  }

  /** Puts ids before what the maker saw at a place, else after what was seen before it. */
  #insert(order: Y.Array<number>, seen: readonly number[], at: number, ids: number[]): void {
    if (ids.length === 0) return;
    const next = seen[at];
    const before = seen[at - 1];
    let place = next === undefined ? -1 : indexIn(order, next, at);
    if (place < 0 && before !== undefined) {
      const found = indexIn(order, before, at - 1);
      place = found < 0 ? -1 : found + 1;
    }
    order.insert(place < 0 ? (at === 0 ? 0 : order.length) : place, ids);
  }
}

function idAt(ids: readonly number[], place: number, what: string): number {
  const id = ids[place];
  if (id === undefined) throw new RangeError(`The table has no ${what} at ${place}.`);
  return id;
}

function checkPlace(place: number, most: number, what: string): void {
  if (!Number.isInteger(place) || place < 0 || place > most)
    throw new RangeError(`The table has no ${what} at ${place}.`);
}

/** Where an id stands; `guess` costs nothing where it is right. -1: nowhere. */
function indexIn(order: Y.Array<number>, id: number, guess: number): number {
  if (guess < order.length && order.get(guess) === id) return guess;
  return order.toArray().indexOf(id);
}

/** Takes ids out of an order, every time they stand there, in as few cuts as can be. */
function removeFrom(order: Y.Array<number>, gone: ReadonlySet<number>): void {
  const ids = order.toArray();
  for (let end = ids.length; end > 0; end -= 1) {
    if (!gone.has(ids[end - 1]!)) continue;
    let start = end - 1;
    while (start > 0 && gone.has(ids[start - 1]!)) start -= 1;
    order.delete(start, end - start);
    end = start + 1;
  }
}
