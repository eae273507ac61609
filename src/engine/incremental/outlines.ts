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
import { reuseEqual } from './memo.js';
import { PackageMemory, type Packed } from './package-cache.js';
import { SiteCache } from './site-cache.js';
import type { WholeReading } from '../site/whole-reading.js';
import { UnreadCache } from './unread.js';

/** All that follows from a document but the verdicts, and the packages that they will be of. */
interface Outline {
  readonly outline: Results;
  readonly packed: readonly Packed[];
}

/**
 * Works out documents one after another up to the verdicts, each only where it differs from the last. Documents must
 * share what is equal in them, as edits leave it; results share it too, so that what is the same object need not be
 * drawn again.
 */
export class Outlines {
  /** Absent until a document has more than windows and work. */
  protected whole: WholeReading | undefined;
  readonly #site = new SiteCache();
  readonly #unread = new UnreadCache();
  readonly #ledgers = new ListMemo<AccessWindow, Ledger>();
  readonly #packages = new PackageMemory();
  #faults: readonly Fault[] = [];
  #notes: readonly PlanNote[] = [];

  /** A document read, with what its site asks of the plan. */
  read(document: PlanDocument): PlanResult {
    return this.#site.read(document, this.whole);
  }

  outlineOf(document: PlanDocument): Outline {
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
    return { outline, packed };
  }
}
