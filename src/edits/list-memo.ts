import { placesIn } from './places.js';

/** What was made of each thing of a list, kept for the next list that has some of the very same things. */
export class ListMemo<T, V> {
  #key: unknown;
  #things: readonly T[] = [];
  #made: readonly V[] = [];

  /**
   * What `make` makes of each thing, in order. It hears of what was made of that thing before in the same way; what was
   * made in any other way is forgotten. The same list as before, where all that was made is.
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
