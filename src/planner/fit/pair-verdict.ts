import type { AccessWindow } from '../../model/index.js';
import { NO, plainCode, type QuickState } from './quick.js';
import type { FitVerdict, MostThatFits, Placement, Reason } from './types.js';

/** Works out all of a verdict on a package, of which it is known under what name it goes. */
export interface Explainer<P extends { readonly id: string }> {
  explain(packed: P, window: AccessWindow): FitVerdict;
  /** How much of it goes in; `undefined`: that cannot be told. */
  most(packed: P, window: AccessWindow): MostThatFits | undefined;
}

/**
 * A verdict of which only what is quick to know is known at first. Reasons, placements and, where the answer is no, by
 * how much, are worked out when they are read.
 */
export class PairVerdict<
  P extends { readonly id: string } = { readonly id: string },
> implements FitVerdict {
  readonly package: string;
  readonly window: string;
  readonly #state: QuickState;
  readonly #packed: P;
  readonly #window: AccessWindow;
  readonly #by: Explainer<P>;
  #whole: FitVerdict | undefined;
  #most: MostThatFits | undefined | null = null;

  constructor(packed: P, window: AccessWindow, state: QuickState, by: Explainer<P>) {
    this.package = packed.id;
    this.window = window.id;
    this.#state = state;
    this.#packed = packed;
    this.#window = window;
    this.#by = by;
  }

  get state(): QuickState {
    return this.#state;
  }

  get fits(): boolean {
    return this.#state >= 0;
  }

  /** Whether nothing that a map shows has still to be worked out. */
  get settled(): boolean {
    return this.fits || (this.#most !== null && (this.#state !== NO || this.#whole !== undefined));
  }

  get most(): MostThatFits | undefined {
    if (this.#most === null) this.#most = this.#by.most(this.#packed, this.#window);
    return this.#most;
  }

  get firstCode(): string | undefined {
    return plainCode(this.#state) ?? this.#whole?.reasons[0]?.code;
  }

  get spareMinutes(): number | null {
    if (this.#state >= 0) return this.#state;
    return this.#state === NO ? this.whole().spareMinutes : null;
  }

  /** Known once all of it is worked out; reading it works nothing out. */
  get spareAtMost(): number | undefined {
    return this.#whole?.spareAtMost;
  }

  /** `false` once it is worked out that a no is not proven; reading it works nothing out. */
  get proven(): false | undefined {
    return this.#whole?.proven;
  }

  get reasons(): readonly Reason[] {
    return this.fits ? [] : this.whole().reasons;
  }

  get placements(): readonly Placement[] {
    return this.fits ? this.whole().placements : [];
  }

  /** All of it, as plain data. */
  whole(): FitVerdict {
    return (this.#whole ??= this.#by.explain(this.#packed, this.#window));
  }
}
