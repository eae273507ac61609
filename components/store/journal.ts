// Edits that are not with the disk yet, written at once: a page that is left in the moment of an edit loses nothing.
// The browser's database answers later; its local storage has taken what it was given when the call returns.
import type { Pending } from '../../src/edits/index.js';
import { planFrom, type PlanDocument } from '../../src/model/index.js';
import { editIn, isSound, sealed } from './records.js';

/** Where a journal is written: the browser's `localStorage`, or what stands in for it. */
export type JournalRoom = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** Longer texts are not journalled, since the room is small: such an edit goes to the database at once. */
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
  readonly text: string;
}

/** The journal of one plan. Without a room it holds nothing, and says so. */
export class Journal {
  readonly #room: JournalRoom | null;
  readonly #plan: string;

  constructor(plan: string, room: JournalRoom | null) {
    this.#plan = plan;
    this.#room = room;
  }

  /** Writes an edit. Returns whether it is kept. */
  add({ id, at, edit }: Pending): boolean {
    return this.#write(`edit/${id}`, { plan: this.#plan, id, at, text: JSON.stringify(edit) });
  }

  /** Writes the document that a plan begins with, until the database has it. */
  begin(document: PlanDocument, at: number): boolean {
    return this.#write('base', { plan: this.#plan, id: '', at, text: JSON.stringify(document) });
  }

  /** Lets edits go that the database has. */
  done(ids: Iterable<string>): void {
    for (const id of ids) this.#room?.removeItem(this.#key(`edit/${id}`));
  }

  /** Lets the first document go: the database has it. */
  begun(): void {
    this.#room?.removeItem(this.#key('base'));
  }

  clear(): void {
    this.done(this.entries().map(({ id }) => id));
    this.begun();
  }

  /** The document that the plan begins with, where the database never got it. */
  base(): PlanDocument | undefined {
    const entry = this.#read('base');
    if (!entry) return undefined;
    try {
      return planFrom(JSON.parse(entry.text), 'the journal').document;
    } catch {
      return undefined;
    }
  }

  /** The edits, in the order in which they were made. Damaged ones are left where they are. */
  entries(): readonly Pending[] {
    const own = this.#key('edit/');
    return keysOf(this.#room)
      .filter((key) => key.startsWith(own))
      .flatMap((key) => {
        const entry = this.#read(key.slice(this.#key('').length));
        const edit = entry && editIn(entry);
        return edit ? [{ id: entry.id, at: entry.at, edit }] : [];
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

/** Ids of the plans whose first document the database never got. */
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
