// What was written down in shifts. Entries only add up: one that is there is never changed or taken away by another.
import type * as Y from 'yjs';
import { plain } from './address.js';
import { isParts } from './values.js';

/** One line of a shift's log. */
export interface ShiftRecord {
  readonly id: string;
  /** When it happened, epoch ms. */
  readonly at: number;
}

const keyOf = (window: string, id: string): string =>
  `${encodeURIComponent(window)}/${encodeURIComponent(id)}`;

export const windowOfKey = (key: string): string => plain(key.slice(0, key.indexOf('/')));

/** The entries of one window, in the order in which they were written down. */
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
    for (const [key, value] of this.#map.entries())
      if (key.startsWith(own) && isRecord(value) && key === keyOf(window, value.id))
        log.push(value);
    log.sort((a, b) => writtenAt(a) - writtenAt(b) || (a.id < b.id ? -1 : 1));
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

const writtenAt = (record: ShiftRecord): number => {
  const at = (record as { enteredAt?: unknown }).enteredAt;
  return typeof at === 'number' ? at : record.at;
};

function isRecord(value: unknown): value is ShiftRecord {
  return (
    isParts(value) &&
    typeof value['id'] === 'string' &&
    typeof value['at'] === 'number' &&
    Number.isFinite(value['at'])
  );
}
