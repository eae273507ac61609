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

  /** Draws these places and no others. Elements that are written anew stay where they are until `settle`: it is quicker. */
  lay(
    parent: Element,
    places: readonly number[],
    write: (item: Item, place: number) => void,
  ): void {
    const wanted = new Set(places);
    this.keep((place) => wanted.has(place));
    for (const place of places) {
      const item = this.take(place);
      write(item, place);
      if (item.element.parentNode !== parent) parent.append(item.element);
    }
    this.shed();
  }

  /**
   * Puts the items into reading order, which recycling mixes up; for those who read without keys.
   * @param after The last child of the parent that is not of the pool.
   * @param held An element that must not be moved: what has the focus would lose it.
   */
  settle(parent: Element, after: Element | null = null, held: Element | null = null): void {
    const items = [...this.#drawn.entries()]
      .sort(([a], [b]) => a - b)
      .map(([, { element }]) => element);
    const at = held ? items.findIndex((item) => item.contains(held)) : -1;
    for (let place = at - 1; place >= 0; place -= 1)
      if (items[place]!.nextElementSibling !== items[place + 1])
        parent.insertBefore(items[place]!, items[place + 1]!);
    for (let place = at + 1; place < items.length; place += 1) {
      const before = items[place - 1] ?? after;
      if (items[place]!.previousElementSibling !== before)
        parent.insertBefore(items[place]!, before ? before.nextSibling : parent.firstChild);
    }
  }
}
