import { placesIn } from './places.js';

/** Memoizes a function of the items of a list: an item of the next list that is the same object is not computed again. */
export class ListMemo<T, V> {
  #key: unknown;
  #things: readonly T[] = [];
  #made: readonly V[] = [];

  /**
   * The result of `make` for each item, in order. `make` is given the item's earlier result, where there is one under the
   * same `key`; results under another key are dropped. Returns the same array as before where every result is the same.
   */
  of(
    key: unknown,
    things: readonly T[],
    make: (at: number, before: V | undefined) => V,
  ): readonly V[] {
    const before = this.#made;
    const places = key === this.#key ? placesIn(this.#things, things) : undefined;
    const made = new Array<V>(things.length);
    let same = before.length === made.length;
    for (let at = 0; at < made.length; at += 1) {
      const place = places ? places[at]! : -1;
      made[at] = make(at, place < 0 ? undefined : before[place]);
      same &&= made[at] === before[at];
    }
    this.#key = key;
    this.#things = things;
    this.#made = same ? before : made;
    return this.#made;
  }
}
