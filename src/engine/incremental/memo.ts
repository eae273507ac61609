import { sameItems, sameJson } from '../../edits/index.js';

/** Keeps one value, and makes it anew only where one of the things it is made from is another object. */
export class Memo<T> {
  #from: readonly unknown[] | undefined;
  #value: T | undefined;

  /** `make` hears of what was kept before; undefined the first time. */
  of(from: readonly unknown[], make: (before: T | undefined) => T): T {
    if (!this.#from || !sameItems(from, this.#from)) {
      this.#value = make(this.#value);
      this.#from = from;
    }
    return this.#value as T;
  }
}

/** The list as it was before, where it holds the same things in the same order. */
export function reuseList<T>(before: readonly T[] | undefined, list: readonly T[]): readonly T[] {
  return before && sameItems(before, list) ? before : list;
}

/** The list with each thing that says the same as the one at its place before given as that one. */
export function reuseEqual<T>(before: readonly T[], list: readonly T[]): readonly T[] {
  return reuseList(
    before,
    list.map((item, at) => {
      const old = before[at];
      return old !== undefined && sameJson(old, item) ? old : item;
    }),
  );
}
