import type { FitVerdict } from '../../src/planner/fit/types.js';

/** Milliseconds of work at a time, so that a key or a scroll hardly waits. */
const SLICE = 10;

/** More pairs than this are not all worked out: that could take minutes. */
export const MOST_PAIRS = 10_000;

/** Works out, in slices while nothing else goes on, how much of each package that does not fit whole goes in each window. */
export class Amounts {
  readonly #onChange: () => void;
  #open: FitVerdict[] = [];
  #of: readonly FitVerdict[] | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** `told`: called when all of it is known. */
  constructor(told: () => void) {
    this.#onChange = told;
  }

  /** Whether `most` of each of these can be read without working anything out. */
  knows(fits: readonly FitVerdict[]): boolean {
    return this.#of === fits && this.#open.length === 0;
  }

  /** Begins, or goes on, with these verdicts; nothing is begun where there are too many. */
  look(fits: readonly FitVerdict[]): void {
    if (this.#of !== fits) {
      this.stop();
      if (fits.length > MOST_PAIRS) return;
      this.#of = fits;
      this.#open = fits.filter((fit) => !fit.fits);
    }
    if (this.#open.length > 0 && this.#timer === undefined) this.#later();
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#of = undefined;
    this.#open = [];
  }

  #later(): void {
    this.#timer = setTimeout(() => {
      const until = performance.now() + SLICE;
      while (this.#open.length > 0 && performance.now() < until) void this.#open.pop()!.most;
      this.#timer = undefined;
      if (this.#open.length > 0) this.#later();
      else this.#onChange();
    }, SLICE);
  }
}
