import type { MapCell } from './map-cell.js';

/** How long the map has to rest before what is in sight is worked out, in milliseconds. */
const REST = 80;
/** Milliseconds of work at a time, so that a key or a scroll hardly waits. */
const SLICE = 10;

/**
 * Works out, bit by bit while nothing else goes on, how much of the work in sight goes, and by how much the rest does not or why. Whatever is out of
 * sight is never worked out.
 */
export class Settling {
  #cells: MapCell[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  #idle: number | undefined;

  /** Takes the place of what was to be worked out before. `milliseconds`: how much may be done at once. */
  look(cells: readonly MapCell[], milliseconds: number): void {
    this.stop();
    this.#cells = cells.filter((cell) => cell.open);
    this.#work(milliseconds);
    if (this.#cells.length > 0) this.#timer = setTimeout(() => this.#next(), REST);
  }

  stop(): void {
    clearTimeout(this.#timer);
    if (this.#idle !== undefined) globalThis.cancelIdleCallback?.(this.#idle);
    this.#idle = undefined;
    this.#cells = [];
  }

  #next(): void {
    const go = (): void => {
      this.#work(SLICE);
      if (this.#cells.length > 0) this.#next();
    };
    // Not every browser tells when it is idle.
    if (globalThis.requestIdleCallback)
      this.#idle = globalThis.requestIdleCallback(go, { timeout: 250 });
    else this.#timer = setTimeout(go, 2 * SLICE);
  }

  #work(milliseconds: number): void {
    const until = performance.now() + milliseconds;
    while (this.#cells.length > 0 && performance.now() < until) {
      const cell = this.#cells.shift()!;
      const verdict = cell.look?.verdict;
      void verdict?.spareMinutes;
      void verdict?.most;
      cell.writeVerdict(false);
    }
  }
}
