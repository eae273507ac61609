import { MINUTE } from '../calendar/index.js';
import { needsKey, type AccessWindow, type Needs, type Plan } from '../model/index.js';
import { ledgerOf } from '../rules/index.js';
import type { Ledger } from '../rules/types.js';

/** Ledgers of a plan's windows, each worked out once; also of windows made longer by whole minutes. */
export class LedgerBook {
  readonly #plan: Plan;
  readonly #kept = new Map<AccessWindow, Map<string, Ledger>>();

  constructor(plan: Plan) {
    this.#plan = plan;
  }

  of(window: AccessWindow, needs: Needs, longerBy = 0): Ledger {
    let kept = this.#kept.get(window);
    if (!kept) this.#kept.set(window, (kept = new Map<string, Ledger>()));
    const key = `${longerBy} ${needsKey(needs)}`;
    let ledger = kept.get(key);
    if (!ledger) {
      const longer = longerBy === 0 ? window : { ...window, end: window.end + longerBy * MINUTE };
      ledger = ledgerOf(longer, needs, this.#plan.rules);
      kept.set(key, ledger);
    }
    return ledger;
  }
}
