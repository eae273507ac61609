import type { ResultColumn } from '../../sheet/result-column.js';
import type { ResultTable } from '../views.js';

// Which worked-out columns a person wants beside the rows is of the person, not of the plan: it is kept on the device.

const keyOf = (kind: ResultTable): string => `possession-fit/results/${kind}`;

/** Ids of the columns to show beside the rows, in order: as they were chosen, else all of them. */
export class ResultsKept {
  readonly #chosen = new Map<ResultTable, readonly string[]>();
  readonly #all = new Map<ResultTable, readonly string[]>();

  of(kind: ResultTable, columns: readonly ResultColumn[]): readonly string[] {
    const chosen = this.#chosen.get(kind) ?? this.#read(kind);
    if (chosen) return chosen;
    const ids = columns.map((column) => column.id);
    const before = this.#all.get(kind);
    if (before && before.length === ids.length) return before;
    this.#all.set(kind, ids);
    return ids;
  }

  choose(kind: ResultTable, ids: readonly string[]): void {
    this.#chosen.set(kind, ids);
    try {
      localStorage.setItem(keyOf(kind), JSON.stringify(ids));
    } catch {
      // Full or barred: the choice holds until the page is left.
    }
  }

  #read(kind: ResultTable): readonly string[] | undefined {
    try {
      const kept: unknown = JSON.parse(localStorage.getItem(keyOf(kind)) ?? 'null');
      if (!Array.isArray(kept) || !kept.every((item) => typeof item === 'string')) return undefined;
      this.#chosen.set(kind, kept);
      return kept;
    } catch {
      return undefined;
    }
  }
}
