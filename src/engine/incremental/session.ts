import type { PlanDocument } from '../../model/index.js';
import { wholeReading } from '../site/site-plan.js';
import type { Results } from '../types.js';
import { explain } from './explain.js';
import { FitCache } from './fit-cache.js';
import { Outlines } from './outlines.js';

/** A session whose verdicts can be read whole. */
export class Session extends Outlines {
  protected override whole = wholeReading;
  readonly #fits = new FitCache(explain);

  /** Nothing has to be loaded. */
  prepare(): void {}

  /** As `recompute` of the engine. */
  recompute(document: PlanDocument, onOutline?: (outline: Results) => void): Results {
    const { outline, packed } = this.outlineOf(document);
    onOutline?.(outline);
    return { ...outline, fits: this.#fits.of(outline.plan, packed) };
  }
}
