import { MadeOf } from '../../edits/index.js';
import { packagesIn, type FitVerdict } from '../../fit/index.js';
import {
  ordinaryNeeds,
  type AccessWindow,
  type Activity,
  type Fault,
  type PlanDocument,
} from '../../model/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Ledger } from '../../rules/types.js';
import type { PlanResult } from '../../tables/index.js';
import { rowsLeftOut } from '../left-out.js';
import { packageOf } from '../packages.js';
import type { PackageSummary, Results } from '../types.js';
import { FitMemory, type Explain, type Packed } from './fit-memory.js';
import { KeptBy, keptAlike, keptList } from './kept-by.js';
import { SiteMemory } from './site-memory.js';
import { UnreadMemory } from './unread.js';

interface KnownPackage {
  readonly packed: Packed;
  readonly summary: PackageSummary;
}

/**
 * Works out documents one after another, each only where it differs from the last. Documents must share what is equal
 * in them, as edits leave it; results share it too, so that what is the same object need not be drawn again.
 *
 * Bare: how verdicts come about is left out, so that a worker, which only sends on what is quick to know of them, need
 * not load it.
 */
export class BareSession {
  readonly #site = new SiteMemory();
  readonly #fits: FitMemory;
  readonly #unread = new UnreadMemory();
  readonly #ledgers = new MadeOf<AccessWindow, Ledger>();
  readonly #packages = new KeptBy<readonly KnownPackage[]>();
  #summaries: readonly PackageSummary[] | undefined;
  #faults: readonly Fault[] = [];

  /** `explain`: as for `FitMemory`. */
  constructor(explain?: Explain) {
    this.#fits = new FitMemory(explain);
  }

  /** A document read, with what its site asks of the plan. */
  read(document: PlanDocument): PlanResult {
    return this.#site.read(document);
  }

  /** As `recompute` of the engine. */
  recompute(document: PlanDocument, onOutline?: (outline: Results) => void): Results {
    const { plan, faults: found, trains } = this.read(document);
    const faults = (this.#faults = keptAlike(this.#faults, found));
    const { windows, activities, rules } = plan;
    const ledgers = this.#ledgers.of(
      rules,
      windows,
      (at, before) => before ?? ledgerOf(windows[at]!, ordinaryNeeds, rules),
    );
    const leftOut = rowsLeftOut(document, faults);
    const packages = this.#packages.of([activities, leftOut], (before = []) =>
      packagesOf(activities, leftOut, before),
    );
    this.#summaries = keptList(
      this.#summaries,
      packages.map((one) => one.summary),
    );
    const outline: Results = {
      plan,
      faults,
      unread: this.#unread.of(document),
      ledgers,
      packages: this.#summaries,
      trains,
      fits: [],
    };
    onOutline?.(outline);
    const fits: readonly FitVerdict[] = this.#fits.of(
      plan,
      packages.map((one) => one.packed),
    );
    return { ...outline, fits };
  }
}

function packagesOf(
  activities: readonly Activity[],
  leftOut: ReadonlyMap<string, number>,
  before: readonly KnownPackage[],
): readonly KnownPackage[] {
  const known = new Map(before.map((one) => [one.packed.id, one]));
  return [...packagesIn(activities)].map(([id, own]): KnownPackage => {
    const old = known.get(id);
    const list = keptList(old?.packed.activities, own);
    const rows = leftOut.get(id) ?? 0;
    if (old?.packed.activities === list && old.packed.rowsLeftOut === rows) return old;
    return {
      packed: { id, activities: list, rowsLeftOut: rows },
      summary: packageOf(id, own, rows),
    };
  });
}
