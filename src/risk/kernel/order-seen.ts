/** A link in the compiled order: the position for a start, the position + size for a finish; ticks in between. */
export interface TickLink {
  readonly slot: number;
  readonly lag: number;
}

/**
 * Which positions are over before which others start, whatever anything lasts: told of the links of each position, in
 * rising order, it tells those that are needed. A link is not where what another link waits for has waited for the same
 * already. This stays true where lengths are changed, or work is held at no minutes and no gaps.
 */
export class OrderSeen {
  readonly #size: number;
  readonly #words: number;
  /** By position a bit for each position that is over before it starts. */
  readonly #before: Int32Array;

  constructor(size: number) {
    this.#size = size;
    this.#words = Math.ceil(size / 32);
    this.#before = new Int32Array(size * this.#words);
  }

  needed(position: number, links: readonly TickLink[]): readonly TickLink[] {
    const row = position * this.#words;
    for (const { slot, lag } of links) {
      const other = slot - this.#size;
      if (other < 0 || lag < 0) continue;
      for (let word = 0; word < this.#words; word += 1)
        this.#before[row + word]! |= this.#before[other * this.#words + word]!;
      this.#before[row + (other >> 5)]! |= 1 << (other & 31);
    }
    if (links.length < 2) return links;
    return links.filter((link, k) => !links.some((other, j) => this.#says(other, j, link, k)));
  }

  /** Whether `other` alone makes the position wait for all that `link` asks for. */
  #says(other: TickLink, j: number, link: TickLink, k: number): boolean {
    const size = this.#size;
    if (j === k || link.slot < size || other.slot < size || other.lag < link.lag) return false;
    // Of two that say the same, the first stays.
    if (other.slot === link.slot) return other.lag > link.lag || j < k;
    const at = link.slot - size;
    const word = this.#before[(other.slot - size) * this.#words + (at >> 5)]!;
    return ((word >>> (at & 31)) & 1) === 1;
  }
}
