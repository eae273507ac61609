// What was written down in shifts. Entries only add up: one that is there is never changed or taken away by another.
import type * as Y from 'yjs';
import type * as z from 'zod/mini';
import { shiftEntrySchema } from '../model/index.js';
import { plain } from './address.js';

/** One line of a shift's log. */
export type ShiftRecord = z.output<typeof shiftEntrySchema>;

const keyOf = (window: string, id: string): string =>
  `${encodeURIComponent(window)}/${encodeURIComponent(id)}`;

export const windowOfKey = (key: string): string => plain(key.slice(0, key.indexOf('/')));

/** What was written down of each window. */
export class ShiftRecords {
  readonly #map: Y.Map<unknown>;
  readonly #logs = new Map<string, readonly ShiftRecord[]>();

  constructor(map: Y.Map<unknown>) {
    this.#map = map;
  }

  of(window: string): readonly ShiftRecord[] {
    const held = this.#logs.get(window);
    if (held) return held;
    const own = `${encodeURIComponent(window)}/`;
    const log: ShiftRecord[] = [];
    for (const [key, value] of this.#map.entries()) {
      if (!key.startsWith(own)) continue;
      const { success, data } = shiftEntrySchema.safeParse(value);
      // Absent and undefined are the same in a plan.
      if (success && key === keyOf(window, data.id))
        log.push(JSON.parse(JSON.stringify(data)) as ShiftRecord);
    }
    log.sort((a, b) => a.enteredAt - b.enteredAt || (a.id < b.id ? -1 : 1));
    this.#logs.set(window, log);
    return log;
  }

  /** Adds those that are not there. Inside a transaction. */
  add(window: string, entries: readonly ShiftRecord[]): void {
    for (const entry of entries) {
      const key = keyOf(window, entry.id);
      if (!this.#map.has(key)) this.#map.set(key, entry);
    }
  }

  /** Looks again at a window whose entries changed. */
  forget(window: string): void {
    this.#logs.delete(window);
  }
}
