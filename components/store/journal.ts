// Changes that are not with the disk yet, written at once: a page that is left in the moment of a change loses nothing.
// The browser's database answers later; its local storage has taken what it was given when the call returns.
import type { Edit } from '../../src/edits/index.js';
import { planFrom, type PlanDocument } from '../../src/model/index.js';
import { fromBase64, toBase64 } from './base64.js';
import { editIn } from './earlier-edit.js';
import { isSound, sealed } from './records.js';

/** Where a journal is written: the browser's `localStorage`, or what stands in for it. */
export type JournalRoom = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** Longer texts are not journalled, since the room is small: such a change goes to the database at once. */
const longest = 400_000;
const prefix = 'possession-fit/journal/';

/** The browser's own room; `null` where there is none or it is forbidden. */
export function journalRoom(): JournalRoom | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

interface Entry {
  readonly plan: string;
  readonly id: string;
  readonly at: number;
  /** In base64; without `kind`, JSON of the version before. */
  readonly text: string;
  readonly kind?: 'update';
}

/** A change that was journalled. */
export interface Journalled {
  readonly id: string;
  readonly at: number;
  /** What was done; of the version before, as an edit of a document. */
  readonly done: { readonly update: Uint8Array } | { readonly edit: Edit };
}

/** What a plan begins with. */
export type Begun = { readonly state: Uint8Array } | { readonly document: PlanDocument };

/** The journal of one plan. Without a room it holds nothing, and says so. */
export class Journal {
  readonly #room: JournalRoom | null;
  readonly #plan: string;

  constructor(plan: string, room: JournalRoom | null) {
    this.#plan = plan;
    this.#room = room;
  }

  /** Writes a change. Returns whether it is kept. */
  add({ id, at, update }: { id: string; at: number; update: Uint8Array }): boolean {
    if (update.length > longest) return false;
    const entry = { plan: this.#plan, id, at, text: toBase64(update), kind: 'update' } as const;
    return this.#write(`edit/${id}`, entry);
  }

  /** Writes what a plan begins with, until the database has it. */
  begin(state: Uint8Array, at: number): boolean {
    if (state.length > longest) return false;
    return this.#write('base', {
      plan: this.#plan,
      id: '',
      at,
      text: toBase64(state),
      kind: 'update',
    });
  }

  /** Lets changes go that the database has. */
  done(ids: Iterable<string>): void {
    for (const id of ids) this.#room?.removeItem(this.#key(`edit/${id}`));
  }

  /** Lets the beginning go: the database has it. */
  begun(): void {
    this.#room?.removeItem(this.#key('base'));
  }

  clear(): void {
    this.done(this.entries().map(({ id }) => id));
    this.begun();
  }

  /** What the plan begins with, where the database never got it. */
  base(): Begun | undefined {
    const entry = this.#read('base');
    if (!entry) return undefined;
    if (entry.kind === 'update') {
      const state = fromBase64(entry.text);
      return state && { state };
    }
    try {
      const { document } = planFrom(JSON.parse(entry.text), 'the journal');
      return document && { document };
    } catch {
      return undefined;
    }
  }

  /** The changes, in the order in which they were made. Damaged ones are left where they are. */
  entries(): readonly Journalled[] {
    const own = this.#key('edit/');
    return keysOf(this.#room)
      .filter((key) => key.startsWith(own))
      .flatMap((key): Journalled[] => {
        const entry = this.#read(key.slice(this.#key('').length));
        if (!entry) return [];
        const { id, at } = entry;
        if (entry.kind === 'update') {
          const update = fromBase64(entry.text);
          return update ? [{ id, at, done: { update } }] : [];
        }
        const edit = editIn(entry);
        return edit ? [{ id, at, done: { edit } }] : [];
      })
      .sort((a, b) => a.at - b.at || a.id.localeCompare(b.id, 'en', { numeric: true }));
  }

  #key(name: string): string {
    return `${prefix}${this.#plan}/${name}`;
  }

  #write(name: string, entry: Entry): boolean {
    if (!this.#room || entry.text.length > longest) return false;
    try {
      this.#room.setItem(this.#key(name), JSON.stringify(sealed({ ...entry })));
      return true;
    } catch {
      // Full or forbidden: the caller writes to the database without waiting.
      return false;
    }
  }

  #read(name: string): Entry | undefined {
    try {
      const entry: unknown = JSON.parse(this.#room?.getItem(this.#key(name)) ?? 'null');
      return isSound(entry) ? (entry as Entry) : undefined;
    } catch {
      return undefined;
    }
  }
}

/** Ids of the plans whose beginning the database never got. */
export function plansBegun(room: JournalRoom | null): readonly string[] {
  return keysOf(room)
    .filter((key) => key.startsWith(prefix) && key.endsWith('/base'))
    .map((key) => key.slice(prefix.length, -'/base'.length));
}

function keysOf(room: JournalRoom | null): string[] {
  if (!room) return [];
  return Array.from({ length: room.length }, (_none, at) => room.key(at)).filter(
    (key) => key !== null,
  );
}
