import type { PlanDocument } from '../../model/index.js';
import { hasMore } from '../site/whole-reading.js';
import type { Results } from '../types.js';
import type { FitCache } from './fit-cache.js';
import { Outlines } from './outlines.js';

/**
 * A session for a worker. How verdicts come about is left out, since a worker only sends on what is quick to know of
 * them; and what finds them is loaded once there is work to find them for, after the windows were told of.
 */
export class BareSession extends Outlines {
  #fits: FitCache | undefined;

  /** Loads what reads a document, before anything is asked of it. */
  async prepare(document: PlanDocument): Promise<void> {
    if (this.whole || !hasMore(document)) return;
    this.whole = (await import('../site/site-plan.js')).wholeReading;
  }

  /** As `recompute` of the engine. */
  async recompute(
    document: PlanDocument,
    onOutline?: (outline: Results) => void,
  ): Promise<Results> {
    const { outline, packed } = this.outlineOf(document);
    onOutline?.(outline);
    if (packed.length === 0) return outline;
    if (!this.#fits) {
      const { FitCache } = await import('./fit-cache.js');
      // Another call may have waited for it too, and come first.
      this.#fits ??= new FitCache();
    }
    return { ...outline, fits: this.#fits.of(outline.plan, packed) };
  }
}
