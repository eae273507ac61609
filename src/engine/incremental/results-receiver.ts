import { ListMemo } from '../../edits/index.js';
import { ordinaryNeeds, type AccessWindow, type PlanRules } from '../../model/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Ledger } from '../../rules/types.js';
import type { PackageSummary, Results } from '../types.js';
import { Receiver, type Sent } from './chain.js';
import type { FitCache } from './fit-cache.js';
import type { Packed } from './package-cache.js';
import type { Travelling } from './results-sender.js';

const noFits: Results['fits'] = [];

/** The end at which results are read. What has not changed since the last that came is the same object. */
export class ResultsReceiver {
  readonly #receiver = new Receiver<Travelling>();
  readonly #ledgers = new ListMemo<AccessWindow, Ledger>();
  readonly #packed = new WeakMap<PackageSummary, Packed>();
  #fits: FitCache | undefined;

  /**
   * `undefined` where results that these build on never came. The first with verdicts wait until what explains verdicts
   * is loaded.
   */
  take(sent: Sent, isOutline: boolean): Results | Promise<Results> | undefined {
    const got = this.#receiver.take(sent);
    if (!got) return undefined;
    const { minutes, states, ...rest } = got;
    const { windows, rules } = rest.plan;
    const ledgers = this.#ledgers.of(
      rules,
      windows,
      (at, before) =>
        before ?? ledgerToldBy(minutes.subarray(3 * at, 3 * at + 3), windows[at]!, rules),
    );
    const outline = { ...rest, ledgers, fits: noFits };
    if (isOutline || states.length === 0) return outline;
    const withFits = (cache: FitCache): Results => ({
      ...outline,
      fits: cache.of(rest.plan, this.#packagesOf(rest), states),
    });
    return this.#fits ? withFits(this.#fits) : this.#loadFits().then(withFits);
  }

  async #loadFits(): Promise<FitCache> {
    const [{ FitCache }, { explain }] = await Promise.all([
      import('./fit-cache.js'),
      import('./explain.js'),
    ]);
    return (this.#fits ??= new FitCache(explain));
  }

  #packagesOf({ plan, packages }: Pick<Results, 'plan' | 'packages'>): readonly Packed[] {
    // A summary is the same object as long as its activities are.
    if (packages.some((summary) => !this.#packed.has(summary))) {
      const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
      for (const summary of packages)
        if (!this.#packed.has(summary))
          this.#packed.set(summary, {
            id: summary.id,
            activities: summary.activities.map((id) => activities.get(id)!),
            rowsLeftOut: summary.rowsLeftOut,
          });
    }
    return packages.map((summary) => this.#packed.get(summary)!);
  }
}

/** A ledger of which the totals are known. Its entries are those of `ledgerOf`, and as plain. */
function ledgerToldBy(
  [grossMinutes, usableMinutes, shortfallMinutes]: Int32Array,
  window: AccessWindow,
  rules: PlanRules,
): Ledger {
  let whole: Ledger | undefined;
  const read = (): Ledger => (whole ??= ledgerOf(window, ordinaryNeeds, rules));
  return {
    window: window.id,
    needs: ordinaryNeeds,
    grossMinutes: grossMinutes!,
    usableMinutes: usableMinutes!,
    get rows() {
      return read().rows;
    },
    get usable() {
      return read().usable;
    },
    shortfallMinutes: shortfallMinutes!,
    get barred() {
      return read().barred;
    },
  };
}
