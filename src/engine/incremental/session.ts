import type { FitVerdict } from '../../fit/index.js';
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
import { FitMemory, type Packed } from './fit-memory.js';
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
 */
export class Session {
  readonly #site = new SiteMemory();
  readonly #fits = new FitMemory();
  readonly #unread = new UnreadMemory();
  readonly #ledgers = new KeptBy<WeakMap<AccessWindow, Ledger>>();
  #packages = new Map<string, KnownPackage>();
  #summaries: readonly PackageSummary[] | undefined;
  #ledgerList: readonly Ledger[] | undefined;
  #faults: readonly Fault[] = [];

  /** A document read, with what its site asks of the plan. */
  read(document: PlanDocument): PlanResult {
    return this.#site.read(document);
  }

  /** As `recompute` of the engine. */
  recompute(document: PlanDocument, onOutline?: (outline: Results) => void): Results {
    const { plan, faults: found, trains } = this.read(document);
    const faults = (this.#faults = keptAlike(this.#faults, found));
    const known = this.#ledgers.of([plan.rules], () => new WeakMap());
    const ledgers = plan.windows.map((window) => {
      let ledger = known.get(window);
      if (!ledger) known.set(window, (ledger = ledgerOf(window, ordinaryNeeds, plan.rules)));
      return ledger;
    });
    this.#ledgerList = keptList(this.#ledgerList, ledgers);
    const packages = this.#packagesOf(plan.activities, rowsLeftOut(document, faults));
    this.#summaries = keptList(
      this.#summaries,
      packages.map((one) => one.summary),
    );
    const outline: Results = {
      plan,
      faults,
      unread: this.#unread.of(document),
      ledgers: this.#ledgerList,
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

  #packagesOf(
    activities: readonly Activity[],
    leftOut: ReadonlyMap<string, number>,
  ): readonly KnownPackage[] {
    const byPackage = new Map<string, Activity[]>();
    for (const one of activities) {
      const list = byPackage.get(one.package);
      if (list) list.push(one);
      else byPackage.set(one.package, [one]);
    }
    const found = [...byPackage].map(([id, own]): KnownPackage => {
      const before = this.#packages.get(id);
      const list = keptList(before?.packed.activities, own);
      const rows = leftOut.get(id) ?? 0;
      if (before?.packed.activities === list && before.packed.rowsLeftOut === rows) return before;
      return {
        packed: { id, activities: list, rowsLeftOut: rows },
        summary: packageOf(id, own, rows),
      };
    });
    this.#packages = new Map(found.map((one) => [one.packed.id, one]));
    return found;
  }
}
