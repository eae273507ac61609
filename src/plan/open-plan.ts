// A plan that is open: a doc of a library that merges what several people do, and the document that is made of it.
import * as Y from 'yjs';
import { emptyPlan, type PlanDocument, type TableText } from '../model/index.js';
import {
  fieldGroup,
  partAddress,
  plain,
  rowOfGroup,
  splitAddress,
  tableAddress,
} from './address.js';
import type { Change, TableChange } from './change.js';
import { keptValues, type KeptValue } from './kept-values.js';
import { partKeys } from './part-schema.js';
import { partOf } from './part-state.js';
import { PlanUndo, settling } from './plan-undo.js';
import { putBack } from './put-back.js';
import { longestName, Registers } from './registers.js';
import { ShiftRecords, windowOfKey, type ShiftRecord } from './shift-records.js';
import { isTable } from './table-base.js';
import { idsOf, TableState } from './table-state.js';
import { mostTyped, tooLong } from '../model/too-long.js';
import { whatComesIn } from './what-comes-in.js';
import { writePart } from './write-part.js';
import { writeSteps, writeTable, type Writing } from './write-table.js';

/** Who makes changes. */
export interface Person {
  /** In their own words, shown to others; empty: not said. */
  readonly name: string;
}

export interface OpenPlanOptions {
  readonly person?: Person;
  /** The clock, epoch ms. */
  readonly now?: () => number;
  /** Whether what was taken away is kept in the doc, so that the undo of an earlier opening can go on. */
  readonly keepAll?: boolean;
}

/** The plan changed. */
export interface PlanChange {
  readonly before: PlanDocument;
  /** The same object as `before` where only the log of a shift or what is kept aside changed. */
  readonly document: PlanDocument;
  /** Made here: an act, an undo, a redo. Else it came from others. */
  readonly own: boolean;
  /** What `incoming` was given; for what was made here, no promise. */
  readonly origin: unknown;
  /** What was done, where it was done here. */
  readonly label: string;
  /** Names of those whose values came in, where they said one. */
  readonly by: readonly string[];
  /** Windows whose log changed. */
  readonly shifts: readonly string[];
}

type Tables = Record<string, TableText>;

export class OpenPlan {
  /** For reading its state. What is written into it past this class is shown only where it is well formed. */
  readonly doc: Y.Doc;
  readonly undo: PlanUndo;
  person: Person;
  #document: PlanDocument;
  readonly #registers: Registers;
  readonly #tables = new Map<string, TableState>();
  readonly #shifts: ShiftRecords;
  readonly #now: () => number;
  readonly #listeners = new Set<(event: PlanChange) => void>();
  #fresh = { block: 0, count: 0 };
  #label = '';
  #kept: readonly KeptValue[] | undefined;

  /** A plan with this content, which nobody else has yet. */
  static of(document: PlanDocument, options: OpenPlanOptions = {}): OpenPlan {
    const plan = new OpenPlan(new Y.Doc(), options);
    plan.#document = document;
    const { tables, ...parts } = document;
    plan.#transact('', settling, (writing) => {
      for (const [part, value] of Object.entries(parts))
        if (value !== undefined) writePart({ part: [part], value }, undefined, writing);
      for (const [name, table] of Object.entries(tables))
        if (table) writeTable(name, undefined, table, writing);
    });
    return plan;
  }

  /** The plan that updates make; undefined where they make none: a part that every plan has is missing. */
  static from(updates: readonly Uint8Array[], options: OpenPlanOptions = {}): OpenPlan | undefined {
    const doc = new Y.Doc({ gc: !options.keepAll });
    doc.transact(() => {
      for (const update of updates) Y.applyUpdate(doc, update, settling);
    }, settling);
    const plan = new OpenPlan(doc, options);
    if (plan.#isWhole()) return plan;
    plan.close();
    return undefined;
  }

  private constructor(doc: Y.Doc, { person = { name: '' }, now = () => 0 }: OpenPlanOptions) {
    this.doc = doc;
    this.person = person;
    this.#now = now;
    const values = doc.getMap('values');
    this.#registers = new Registers(values);
    this.#shifts = new ShiftRecords(doc.getMap('shift'));
    this.undo = new PlanUndo(doc, this.#registers, this);
    const { tables: _, ...none } = emptyPlan('', 'UTC');
    this.#document = { ...none, tables: {} as PlanDocument['tables'] };
    this.#readAll();
    doc.on('afterTransaction', this.#onTransaction);
  }

  /** The plan as it stands. What a change did not touch is the same object as before. */
  get document(): PlanDocument {
    return this.#document;
  }

  /**
   * Makes changes, as one act. False where the plan is as it was.
   *
   * Throws `RangeError` for a place or part that the plan does not have, and for a text that is longer than others take
   * (`sizeLimits.typed`; a table taken whole may hold longer ones); then nothing is changed.
   */
  change(changes: Change | readonly Change[], label: string): boolean {
    const list = Array.isArray(changes) ? (changes as readonly Change[]) : [changes as Change];
    for (const change of list) checkLength(change);
    return this.#transact(label, this, (writing) => {
      for (const change of list) this.#make(change, writing);
    });
  }

  /** Takes in what others sent. Where it may not be taken nothing is changed, and `refused` says why. */
  incoming(update: Uint8Array, origin: unknown): { readonly refused?: string } {
    const refused = whatComesIn(update);
    if (refused !== undefined) return { refused };
    Y.applyUpdate(this.doc, update, origin);
    return {};
  }

  /** Tells of every change. Returns what ends it. */
  onChange(listener: (event: PlanChange) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  /** Tells of every update of the doc, with the origin that `incoming` was given. Returns what ends it. */
  onUpdate(listener: (update: Uint8Array, origin: unknown) => void): () => void {
    this.doc.on('update', listener);
    return () => this.doc.off('update', listener);
  }

  /** Values that do not stand, the last set first. */
  get kept(): readonly KeptValue[] {
    return (this.#kept ??= keptValues(this.#registers, this.#tables));
  }

  /** Makes a value stand that did not. */
  putBack({ id, place }: KeptValue): void {
    this.#transact(`put back: ${place}`, this, (writing) => putBack(id, this.#tables, writing));
  }

  /** Lets a value go that does not stand. */
  letGo({ id, place }: KeptValue): void {
    this.#transact(`let go: ${place}`, this, ({ registers }) => registers.take(id));
  }

  /** What was written down in the shift of a window. */
  shift(window: string): readonly ShiftRecord[] {
    return this.#shifts.of(window);
  }

  /** Adds entries to the log of a window, each once. They cannot be undone. */
  addShift(window: string, entries: readonly ShiftRecord[]): void {
    this.doc.transact(() => this.#shifts.add(window, entries), adding);
  }

  /** Whether an update is in the plan: all that it put in, whatever it builds on. */
  has(update: Uint8Array): boolean {
    const known = Y.decodeStateVector(this.vector());
    return [...Y.parseUpdateMeta(update).to].every(
      ([client, to]) => to <= (known.get(client) ?? 0),
    );
  }

  /** All of it, as one update. */
  state(): Uint8Array {
    return Y.encodeStateAsUpdate(this.doc);
  }

  /** What somebody has not who is at the state vector given. */
  since(vector: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.doc, vector);
  }

  vector(): Uint8Array {
    return Y.encodeStateVector(this.doc);
  }

  /** Several updates as one. */
  merged(updates: readonly Uint8Array[]): Uint8Array {
    return Y.mergeUpdates([...updates]);
  }

  close(): void {
    this.#listeners.clear();
    this.undo.destroy();
    this.doc.destroy();
  }

  #transact(label: string, origin: unknown, write: (writing: Writing) => void): boolean {
    const by = this.person.name.slice(0, longestName);
    const writing: Writing = {
      doc: this.doc,
      registers: this.#registers,
      said: { by, at: this.#now() },
      freshIds: (count) => this.#freshIds(count),
    };
    this.#label = label;
    this.undo.label = label;
    let trouble: { error: unknown } | undefined;
    let changed = false;
    this.doc.transact((transaction) => {
      try {
        write(writing);
      } catch (error) {
        trouble = { error };
      }
      changed = transaction.changed.size > 0;
    }, origin);
    this.#label = '';
    if (trouble) {
      if (changed && origin === this) this.undo.drop();
      throw trouble.error;
    }
    return changed;
  }

  #make(change: Change, writing: Writing): void {
    if ('part' in change) {
      const [key = '', name = '', ...path] = change.part;
      if (key !== 'tables') writePart(change, this.#partNow(key), writing);
      else if (path.length === 0)
        this.#replace(name, change.value as TableText | undefined, writing);
      else throw new RangeError(`A table is changed by steps: ${change.part.join('.')}.`);
    } else if ('whole' in change) this.#replace(change.table, change.whole, writing);
    else this.#step(change, writing);
  }

  #replace(name: string, whole: TableText | undefined, writing: Writing): void {
    if (whole !== undefined && !isTable(whole))
      throw new RangeError(`The table ${name} is larger than any that is taken, or none.`);
    writeTable(name, this.#tables.get(name), whole, writing);
    this.#readTable(name);
  }

  #step({ table, of, steps, made }: TableChange, writing: Writing): void {
    const state = this.#tables.get(table);
    if (!state) throw new RangeError(`The plan has no table ${table}.`);
    const seen = (of && idsOf.get(of)) ?? state.ids;
    const after = writeSteps(state, seen, steps, writing);
    if (made) idsOf.set(made, after);
  }

  /** The part as it stands within the act that is under way. */
  #partNow(key: string): unknown {
    const held = (this.#document as unknown as Record<string, unknown>)[key];
    return partOf(this.#registers, key, held);
  }

  /** Ids are numbers that nobody else gives out: a random block of the library's own, and a count in it. */
  #freshIds(count: number): number {
    const room = 2 ** 20;
    if (this.#fresh.block === 0 || this.#fresh.count + count > room) {
      const block = this.#fresh.block === 0 ? this.doc.clientID : new Y.Doc().clientID;
      this.#fresh = { block: Math.max(1, block), count: 0 };
    }
    const first = this.#fresh.block * room + this.#fresh.count;
    this.#fresh.count += count;
    return first;
  }

  #isWhole(): boolean {
    const { tables } = this.#document;
    const needed = emptyPlan('', 'UTC');
    return (
      Object.keys(needed.tables).every((name) => name in tables) &&
      Object.keys(needed).every((key) => key === 'tables' || this.#partNow(key) !== undefined)
    );
  }

  #readAll(): void {
    for (const name of this.#registers.group('t').keys()) this.#readTable(plain(name));
    this.#document = this.#assembled(new Set(partKeys));
  }

  /** Looks again at which table stands under a name. */
  #readTable(name: string): void {
    const held = this.#tables.get(name);
    for (const { value, holder } of this.#registers.entries(tableAddress(name))) {
      if (value === undefined) break;
      if (holder === undefined) continue;
      if (held?.id === holder) return;
      if (!isTable(value)) continue;
      this.#tables.set(name, new TableState(holder, value, this.doc, this.#registers));
      return;
    }
    this.#tables.delete(name);
  }

  #assembled(parts: ReadonlySet<string>): PlanDocument {
    const before = this.#document as unknown as Record<string, unknown>;
    const held = this.#document.tables as unknown as Tables;
    const tables: Tables = {};
    for (const [name, { text }] of this.#tables) tables[name] = text;
    const names = Object.keys(tables);
    const sameTables =
      names.length === Object.keys(held).length &&
      names.every((name) => tables[name] === held[name]);
    const all = new Map<string, unknown>(Object.entries(before));
    all.set('tables', sameTables ? held : tables);
    for (const key of parts) {
      const value = partOf(this.#registers, key, before[key]);
      if (value !== undefined) all.set(key, value);
      else if (!(key in required)) all.delete(key);
    }
    const made = Object.fromEntries(all);
    const keys = [...all.keys()];
    const same =
      keys.length === Object.keys(before).length && keys.every((key) => made[key] === before[key]);
    return same ? this.#document : (made as unknown as PlanDocument);
  }

  readonly #onTransaction = (transaction: Y.Transaction): void => {
    if (transaction.changed.size === 0) return;
    const before = this.#document;
    const { groups, parts, names, shifts, by } = this.#read(transaction);
    for (const name of names) this.#readTable(name);
    const changed: ReadonlyMap<unknown, unknown> = transaction.changed;
    let moved = false;
    for (const state of this.#tables.values()) {
      const orders = {
        rows: changed.has(state.rows) || groups.has(`added ${state.id}`),
        columns: changed.has(state.columns) || groups.has(`added ${state.id}`),
      };
      moved ||= orders.rows || orders.columns;
      if (orders.rows || orders.columns || groups.size > 0) state.refresh(groups, orders);
    }
    this.#document = this.#assembled(parts);
    const { origin } = transaction;
    const turned = this.undo.isTurn(origin);
    const own = origin === this && names.size === 0 && parts.size === 0 && !moved;
    if (!own || this.#registers.disputed.size > 0 || !this.#areShown(groups))
      this.#kept = undefined;
    if (origin === settling && before === this.#document) return;
    const event: PlanChange = {
      before,
      document: this.#document,
      own: origin === this || turned || origin === adding || origin === settling,
      origin,
      label: this.#label,
      by: [...by],
      shifts: [...shifts],
    };
    for (const listener of this.#listeners) listener(event);
  };

  /** Whether nothing is aside and all rows that were typed into are shown: then nothing can have come to be set aside. */
  #areShown(groups: ReadonlySet<string>): boolean {
    if (this.#kept?.length !== 0) return false;
    return [...groups].every((group) => {
      const { kind, holder } = splitAddress(`${group}/`);
      const row = kind === 'c' ? rowOfGroup(group) : undefined;
      if (row === undefined) return kind === 'c';
      const state = [...this.#tables.values()].find((table) => table.id === holder);
      return state !== undefined && state.placeOf(row) >= 0;
    });
  }

  /** The part that a holder's fields and items belong to; undefined where they are a table's, or of what was replaced. */
  #partOfHolder(holder: string): string | undefined {
    return partKeys.find((key) => {
      const whole = this.#registers.standing(partAddress(key))?.holder;
      if (whole === undefined) return false;
      if (whole === holder) return true;
      return [...this.#registers.group(fieldGroup(whole)).values()].some(
        ([entry]) => entry?.holder === holder,
      );
    });
  }

  /** What a transaction touched. */
  #read(transaction: Y.Transaction): {
    groups: Set<string>;
    parts: Set<string>;
    names: Set<string>;
    shifts: Set<string>;
    by: Set<string>;
  } {
    const found = {
      groups: new Set<string>(),
      parts: new Set<string>(),
      names: new Set<string>(),
      shifts: new Set<string>(),
      by: new Set<string>(),
    };
    const values: unknown = this.doc.getMap('values');
    const shift: unknown = this.doc.getMap('shift');
    const added: unknown = this.doc.getMap('added');
    for (const [type, keys] of transaction.changed) {
      if ((type as unknown) === added)
        // A row whose order came before it does itself: rare, and then all is looked at again.
        for (const state of this.#tables.values())
          if ([...keys].some((key) => key?.startsWith(`${state.id}/`)))
            found.groups.add(`added ${state.id}`);
      for (const key of keys) {
        if (key === null) continue;
        if ((type as unknown) === shift) {
          const window = windowOfKey(key);
          this.#shifts.forget(window);
          found.shifts.add(window);
        }
        if ((type as unknown) !== values) continue;
        const address = this.#registers.read(key);
        if (address === undefined) continue;
        const entry = this.#registers.entries(address).find((item) => item.key === key);
        if (entry && entry.by !== '') found.by.add(entry.by);
        const { kind, group, name } = splitAddress(address);
        if (kind === 't') found.names.add(plain(name));
        else if (kind === 'p') found.parts.add(plain(name));
        else if (kind === 'c') found.groups.add(group);
        else {
          found.groups.add(group);
          const part = this.#partOfHolder(splitAddress(address).holder);
          if (part !== undefined) found.parts.add(part);
        }
      }
    }
    return found;
  }
}

/** A text that others would refuse is refused here, where it can still be shortened. */
function checkLength(change: Change): void {
  if ('whole' in change || ('part' in change && change.part[0] === 'tables')) return;
  const length = tooLong('part' in change ? change.value : change.steps);
  if (length === undefined) return;
  const [has, most] = [length, mostTyped].map((count) => count.toLocaleString('en-GB'));
  throw new RangeError(
    `Nothing was changed: a text of ${has} characters is longer than a plan takes (${most}). Shorten it.`,
  );
}

/** Origin of entries of a log: they are never undone. */
const adding = 'adding';

const required = emptyPlan('', 'UTC') as unknown as Record<string, unknown>;
