/** Something drawn at a place of a long list, made once and written anew as places come and go. */
export interface Pooled {
  readonly element: Element;
}

/** Most that are kept while they are not needed: as many as one scroll step can ask for. */
const SPARE = 60;

/** The items of a long list that are in sight, each at its place. Elements are recycled, never thrown away and made again. */
export class Pool<Item extends Pooled> {
  readonly #make: () => Item;
  readonly #drawn = new Map<number, Item>();
  #free: Item[] = [];

  constructor(make: () => Item) {
    this.#make = make;
  }

  get size(): number {
    return this.#drawn.size;
  }

  /** What is drawn at a place. */
  at(place: number): Item | undefined {
    return this.#drawn.get(place);
  }

  items(): IterableIterator<Item> {
    return this.#drawn.values();
  }

  /** Gives free all that stands at other places; it stays in the document until `shed`. */
  keep(wanted: (place: number) => boolean): void {
    for (const [place, item] of this.#drawn)
      if (!wanted(place)) {
        this.#drawn.delete(place);
        this.#free.push(item);
      }
  }

  /** The item of a place: the one that stands there, else a free one, else a new one. */
  take(place: number): Item {
    let item = this.#drawn.get(place);
    if (!item) this.#drawn.set(place, (item = this.#free.pop() ?? this.#make()));
    return item;
  }

  /** Takes what is free out of the document. */
  shed(): void {
    for (const item of this.#free) item.element.remove();
    this.#free = this.#free.slice(0, SPARE);
  }

  /** Puts the items into reading order, which recycling mixes up; for those who read without keys. */
  settle(parent: Element): void {
    const items = [...this.#drawn.entries()].sort(([a], [b]) => a - b);
    for (const [index, [, item]] of items.entries()) {
      const there = parent.children[index] ?? null;
      if (there !== item.element) parent.insertBefore(item.element, there);
    }
  }

  /**
   * Draws these places and no others, in reading order at once, without moving an element that stays: one that has the
   * focus would lose it.
   * @param places Ascending.
   * @param after The last child of the parent that is not of the pool.
   */
  lay(
    parent: Element,
    places: readonly number[],
    write: (item: Item, place: number) => void,
    after: Element | null = null,
  ): void {
    const wanted = new Set(places);
    this.keep((place) => wanted.has(place));
    this.shed();
    let next = after ? after.nextElementSibling : parent.firstElementChild;
    for (const place of places) {
      const item = this.take(place);
      write(item, place);
      if (item.element === next) next = next.nextElementSibling;
      else parent.insertBefore(item.element, next);
    }
  }
}
