import { ListMemo } from '../../edits/index.js';
import {
  ordinaryNeeds,
  type AccessWindow,
  type Fault,
  type PlanDocument,
  type PlanNote,
} from '../../model/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Ledger } from '../../rules/types.js';
import type { PlanResult } from '../../tables/index.js';
import type { Results } from '../types.js';
import { FitCache, type Explain } from './fit-cache.js';
import { reuseEqual } from './memo.js';
import { PackageMemory } from './package-cache.js';
import { SiteCache } from './site-cache.js';
import { UnreadCache } from './unread.js';

/**
 * Works out documents one after another, each only where it differs from the last. Documents must share what is equal
 * in them, as edits leave it; results share it too, so that what is the same object need not be drawn again.
 *
 * Bare: how verdicts come about is left out, so that a worker, which only sends on what is quick to know of them, need
 * not load it.
 */
export class BareSession {
  readonly #site = new SiteCache();
  readonly #fits: FitCache;
  readonly #unread = new UnreadCache();
  readonly #ledgers = new ListMemo<AccessWindow, Ledger>();
  readonly #packages = new PackageMemory();
  #faults: readonly Fault[] = [];
  #notes: readonly PlanNote[] = [];

  /** `explain`: as for `FitMemory`. */
  constructor(explain?: Explain) {
    this.#fits = new FitCache(explain);
  }

  /** A document read, with what its site asks of the plan. */
  read(document: PlanDocument): PlanResult {
    return this.#site.read(document);
  }

  /** As `recompute` of the engine. */
  recompute(document: PlanDocument, onOutline?: (outline: Results) => void): Results {
    const { plan, faults: found, notes: noted, trains, packagesLeftOut } = this.read(document);
    const faults = (this.#faults = reuseEqual(this.#faults, found));
    const notes = (this.#notes = reuseEqual(this.#notes, noted));
    const { windows, activities, rules } = plan;
    const ledgers = this.#ledgers.of(
      rules,
      windows,
      (at, before) => before ?? ledgerOf(windows[at]!, ordinaryNeeds, rules),
    );
    this.#packages.take(activities, packagesLeftOut);
    const { packed, summaries } = this.#packages;
    const outline: Results = {
      plan,
      faults,
      notes,
      unread: this.#unread.of(document),
      ledgers,
      packages: summaries,
      trains,
      fits: [],
    };
    onOutline?.(outline);
    return { ...outline, fits: this.#fits.of(plan, packed) };
  }
}
