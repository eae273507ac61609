/** What may end a search before its steps are done. */
export interface Cut {
  /** Milliseconds from any fixed moment. */
  readonly clock: () => number;
  /** Milliseconds from now after which it must end; absent: never. */
  readonly milliseconds?: number;
  /** Asked now and then, with the part of its steps that is done, 0 to 1; `true` ends the search. */
  readonly shouldStop?: (done: number) => boolean;
}

/** Steps between two looks at the clock: well under a millisecond. */
const LOOK = 500;
/** Part of the time after which what comes after the search is tried out, and how much more time than that took is kept. */
const TRIAL = 0.3;
const SPARE = 1.1;

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
  #deadline: number;
  /** When what comes after the search is tried out. */
  readonly #trialAt: number;
  #trial: (() => boolean) | undefined;
  #cutShort = false;
  #hasPlan = false;
  /** Steps at which it looks at the clock next. */
  #look = 0;

  constructor(cut?: Cut) {
    this.#cut = cut;
    const { milliseconds = Number.POSITIVE_INFINITY } = cut ?? {};
    const now = cut ? cut.clock() : 0;
    this.#deadline = now + milliseconds;
    this.#trialAt = now + TRIAL * milliseconds;
  }

  /**
   * Where time is limited, keeps as much of it free at the end as some work takes that comes after the search: the work is
   * tried out once on the way and timed. Its steps are not counted.
   *
   * @param work `false` where there is nothing yet to try it with.
   */
  keepTimeFor(work: () => boolean): void {
    if (Number.isFinite(this.#deadline)) this.#trial = work;
  }

  /** Whether all its steps are done. */
  get isSpent(): boolean {
    return this.spent >= this.limit;
  }

  /** Whether it was ended from without before its steps were done. */
  get cutShort(): boolean {
    return this.#cutShort;
  }

  /** Tells that a first plan was made, unless the making of it was cut short. */
  firstPlanMade(): void {
    this.#hasPlan ||= !this.#cutShort;
  }

  /** It was ended before a first plan was whole: of what finds no place nobody knows why. */
  get endedTooSoon(): boolean {
    return this.#cutShort && !this.#hasPlan;
  }

  /** Whether it must end now. Once it must, it always must. */
  isCut(): boolean {
    if (!this.#cut || this.#cutShort || this.spent < this.#look) return this.#cutShort;
    this.#look = this.spent + LOOK;
    const { clock, shouldStop } = this.#cut;
    if (this.#trial && clock() >= this.#trialAt) this.#tryOut(this.#trial, clock);
    this.#cutShort =
      clock() >= this.#deadline || shouldStop?.(Math.min(1, this.spent / this.limit)) === true;
    return this.#cutShort;
  }

  #tryOut(work: () => boolean, clock: () => number): void {
    const { spent } = this;
    const began = clock();
    this.#trial = undefined;
    if (began >= this.#deadline) return;
    if (work()) this.#deadline -= SPARE * (clock() - began);
    else this.#trial = work;
    this.spent = spent;
  }

  /** Tells when a share of the steps that are left is done, or the search must end. */
  until(share: number): () => boolean {
    return this.untilSpent(this.spent + share * (this.limit - this.spent));
  }

  /** Tells when so many steps are done in all, or the search must end. */
  untilSpent(steps: number): () => boolean {
    return () => this.spent >= steps || this.isCut();
  }
}
