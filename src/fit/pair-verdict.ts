import { NO, plainCode, type QuickState } from './quick.js';
import type { FitVerdict, Placement, Reason } from './types.js';

/** Works out all of a verdict. */
export type Explain = () => FitVerdict;

/**
 * A verdict of which only what is quick to know is known at first. Reasons, placements and, where the answer is no, by
 * how much, are worked out when they are read.
 */
export class PairVerdict implements FitVerdict {
  readonly package: string;
  readonly window: string;
  readonly #state: QuickState;
  readonly #explain: Explain;
  #whole: FitVerdict | undefined;

  constructor(packageName: string, window: string, state: QuickState, explain: Explain) {
    this.package = packageName;
    this.window = window;
    this.#state = state;
    this.#explain = explain;
  }

  get state(): QuickState {
    return this.#state;
  }

  get fits(): boolean {
    return this.#state >= 0;
  }

  /** Whether nothing that a map shows has still to be worked out. */
  get settled(): boolean {
    return this.#state !== NO || this.#whole !== undefined;
  }

  get firstCode(): string | undefined {
    return plainCode(this.#state) ?? this.#whole?.reasons[0]?.code;
  }

  get spareMinutes(): number | null {
    if (this.#state >= 0) return this.#state;
    return this.#state === NO ? this.whole().spareMinutes : null;
  }

  get reasons(): readonly Reason[] {
    return this.fits ? [] : this.whole().reasons;
  }

  get placements(): readonly Placement[] {
    return this.fits ? this.whole().placements : [];
  }

  /** All of it, as plain data. */
  whole(): FitVerdict {
    return (this.#whole ??= this.#explain());
  }

  /** Takes in what was worked out elsewhere. */
  settle(whole: FitVerdict): void {
    this.#whole ??= whole;
  }
}
