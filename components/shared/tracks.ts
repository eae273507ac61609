/** A run of places in a list; half-open. */
export interface Places {
  readonly first: number;
  readonly end: number;
}

/** The places of a list of even sizes between two pixels, and `extra` more at either end. */
export function evenPlaces(
  from: number,
  to: number,
  size: number,
  count: number,
  extra: number,
): Places {
  const first = Math.max(0, Math.floor(from / size) - extra);
  const end = Math.min(count, Math.ceil(to / size) + extra);
  return { first: Math.min(first, count), end: Math.max(0, end) };
}

/** Rows of any height, one under the other. */
export class Tracks {
  /** Where each row starts, in pixels; the last is where all end. */
  readonly #starts: Float64Array;

  /** @param sizes Pixels, each above zero. */
  constructor(sizes: readonly number[]) {
    this.#starts = new Float64Array(sizes.length + 1);
    for (const [at, size] of sizes.entries()) this.#starts[at + 1] = this.#starts[at]! + size;
  }

  get count(): number {
    return this.#starts.length - 1;
  }

  get total(): number {
    return this.#starts[this.count]!;
  }

  start(place: number): number {
    return this.#starts[place] ?? this.total;
  }

  size(place: number): number {
    return this.start(place + 1) - this.start(place);
  }

  /** The rows that show between two pixels. */
  between(from: number, to: number): Places {
    if (to <= from || this.count === 0) return { first: 0, end: 0 };
    const first = this.#holding(from);
    const last = this.#holding(to);
    return { first, end: this.start(last) < to ? last + 1 : last };
  }

  /** The row at a pixel; the first or the last beyond them. */
  #holding(pixel: number): number {
    let low = 0;
    let high = this.count - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (this.start(middle) <= pixel) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

/** Every place of a run, and one more that is always drawn: it may have the focus. Ascending. */
export function placesWith({ first, end }: Places, kept: number, count: number): number[] {
  const places: number[] = [];
  const keeps = kept >= 0 && kept < count;
  if (keeps && kept < first) places.push(kept);
  for (let place = first; place < end; place += 1) places.push(place);
  if (keeps && kept >= end) places.push(kept);
  return places;
}
