import type { FitVerdict } from '../../../src/engine/types.js';
import type { Looked } from '../../why/explain-fit.js';
import type { Desk } from '../desk-parts.js';

/** Asks the independent check about a fit that is explained, once for each verdict. */
export class FitLook {
  readonly #desk: Desk;
  #verdict: FitVerdict | undefined;
  #looked: Looked = 'not-looked';

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  /** What is known so far; the explanation is made anew when more is. A "no" is nothing that it can look at. */
  of(verdict: FitVerdict): Looked {
    if (verdict !== this.#verdict) {
      this.#verdict = verdict;
      void this.#ask(verdict);
    }
    return this.#looked;
  }

  async #ask(verdict: FitVerdict): Promise<void> {
    const { engine, document, picked } = this.#desk;
    this.#looked = 'not-looked';
    if (!verdict.fits || !engine || !document) return;
    this.#looked = 'looking';
    const { package: name, window, placements, spareMinutes } = verdict;
    const claim = { package: name, window, placements, spareMinutes };
    const answer = await engine.checkFits(document, [claim]).catch(() => undefined);
    if (verdict !== this.#verdict) return;
    this.#looked = answer?.[0] ?? 'not-looked';
    picked.refresh();
  }
}
