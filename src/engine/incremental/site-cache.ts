import type { Activity, PlanDocument, PlanRules } from '../../model/index.js';
import { planWith, PlanCache, type PlanResult } from '../../tables/index.js';
import { hasMore, type WholeReading } from '../site/whole-reading.js';
import { reuseList } from './memo.js';

/**
 * Reads documents one after another, each only where it differs from the last; what is equal in two plans is the same
 * object in both.
 */
export class SiteCache {
  readonly #tables = new PlanCache();
  readonly #heeding = new WeakMap<Activity, Activity>();
  #activities: readonly Activity[] | undefined;
  #rules:
    | { readonly from: PlanRules; readonly closed: string; readonly rules: PlanRules }
    | undefined;
  #last: { readonly document: PlanDocument; readonly read: PlanResult } | undefined;

  /** @throws {RangeError} Where a document has more than windows and work, and there is no `whole`. */
  read(document: PlanDocument, whole?: WholeReading): PlanResult {
    if (this.#last?.document === document) return this.#last.read;
    if (!whole && hasMore(document)) throw new RangeError('only windows and work can be read');
    const plain = planWith(whole?.readers, document, this.#tables);
    const read = whole ? this.#settled(plain, whole.withSite(plain)) : plain;
    this.#last = { document, read };
    return read;
  }

  #settled(plain: PlanResult, read: PlanResult): PlanResult {
    if (plain === read) return read;
    const activities = reuseList(
      this.#activities,
      read.plan.activities.map((activity, at) =>
        this.#sameActivity(plain.plan.activities[at]!, activity),
      ),
    );
    this.#activities = activities;
    const rules = this.#sameRules(plain.plan.rules, read.plan.rules);
    return { ...read, plan: { ...read.plan, activities, rules } };
  }

  #sameActivity(from: Activity, made: Activity): Activity {
    if (from === made) return made;
    const before = this.#heeding.get(from);
    if (before && sameNames(before.heeds, made.heeds)) return before;
    this.#heeding.set(from, made);
    return made;
  }

  #sameRules(from: PlanRules, made: PlanRules): PlanRules {
    if (from === made) return made;
    const closed = JSON.stringify(made.closed);
    if (this.#rules?.from === from && this.#rules.closed === closed) return this.#rules.rules;
    this.#rules = { from, closed, rules: made };
    return made;
  }
}

function sameNames(a: readonly string[] = [], b: readonly string[] = []): boolean {
  return a.length === b.length && a.every((text, at) => text === b[at]);
}
