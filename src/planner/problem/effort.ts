/** What may end a search before its steps are done. */
export interface Cut {
  /** Milliseconds from any fixed moment. */
  readonly clock: () => number;
  /** Milliseconds from now after which it must end; absent: never. */
  readonly milliseconds?: number;
  /** Asked now and then, with the part of its steps that is done, 0 to 1; `true` ends the search. */
  readonly shouldStop?: (done: number) => boolean;
}

/**
 * Work done in a search, counted in steps: the same work is as many steps on every machine at any load. A step is about
 * as long as a look at one stretch of time.
 */
export class Effort {
  /** Steps done. */
  spent = 0;
  /** Steps after which the search ends by itself. */
  limit = Number.POSITIVE_INFINITY;
  readonly #cut: Cut | undefined;
  readonly #deadline: number;
  #cutShort = false;

  constructor(cut?: Cut) {
    this.#cut = cut;
    this.#deadline = cut ? cut.clock() + (cut.milliseconds ?? Number.POSITIVE_INFINITY) : 0;
  }

  /** Whether it was ended from without before its steps were done. */
  get cutShort(): boolean {
    return this.#cutShort;
  }

  /** Whether it must end now. Once it must, it always must. */
  isCut(): boolean {
    if (!this.#cut || this.#cutShort) return this.#cutShort;
    const { clock, shouldStop } = this.#cut;
    this.#cutShort =
      clock() >= this.#deadline || shouldStop?.(Math.min(1, this.spent / this.limit)) === true;
    return this.#cutShort;
  }

  /** Tells when a share of the steps that are left is done, or the search must end. */
  until(share: number): () => boolean {
    const end = this.spent + share * (this.limit - this.spent);
    return () => this.spent >= end || this.isCut();
  }
}
