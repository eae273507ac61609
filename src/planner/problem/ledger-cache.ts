import type { AccessWindow, Activity, Needs, Plan } from '../../model/index.js';
import { maturityCurve, type MaturityCurve } from '../../rules/conditions/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Ledger } from '../../rules/types.js';
import { Effort } from './effort.js';
import { skeletonOf, type Skeleton } from './skeleton.js';
import { SupplyCache } from './supply-cache.js';
import { keyOf, UsableTimes } from './usable-times.js';

/** Shapes of windows up to which answers are kept, so that edits without end do not fill the memory. */
const MOST_SHAPES = 2000;

/**
 * What problems of one plan have in common, each worked out once: ledgers of its windows, their usable time, what there is
 * of its resources, and what sets of its activities are.
 */
export class LedgerCache {
  readonly supplies: SupplyCache;
  /** Counts the work on all verdicts; past its limit none is worked out. */
  readonly effort = new Effort();
  readonly #plan: Plan;
  /** Usable time of its windows, also of windows made longer. */
  readonly usable: UsableTimes;
  readonly #ledgers: WeakMap<AccessWindow, Map<string, Ledger>>;
  // Not taken over from another book: what there is of resources may differ.
  readonly #states = new WeakMap<Skeleton, Map<string, number>>();
  #curve: MaturityCurve | undefined;
  #open: LedgerCache | undefined;
  readonly #skeletons: WeakMap<readonly Activity[], Skeleton>;

  /** `like`: the book of a plan with the same rules, zone and curing, of which everything else is taken over. */
  constructor(plan: Plan, like?: LedgerCache) {
    this.#plan = plan;
    this.usable = like ? like.usable : new UsableTimes(plan.rules);
    this.#ledgers = like ? like.#ledgers : new WeakMap<AccessWindow, Map<string, Ledger>>();
    this.#skeletons = like ? like.#skeletons : new WeakMap<readonly Activity[], Skeleton>();
    this.supplies = new SupplyCache(plan.resources, plan.zone);
  }

  /** The book of the same plan if shifts had no end and no curfew barred anything. */
  withoutStops(): LedgerCache {
    const { shifts: _, ...rules } = this.#plan.rules;
    return (this.#open ??= new LedgerCache({ ...this.#plan, rules: { ...rules, curfews: [] } }));
  }

  /** When concrete has cured; never, where the plan does not say how it does. */
  get curve(): MaturityCurve {
    const { curing } = this.#plan;
    return (this.#curve ??= curing ? maturityCurve(curing) : neverCured);
  }

  of(window: AccessWindow, needs: Needs): Ledger {
    let ledgers = this.#ledgers.get(window);
    if (!ledgers) this.#ledgers.set(window, (ledgers = new Map<string, Ledger>()));
    const key = keyOf(needs);
    let ledger = ledgers.get(key);
    if (!ledger) ledgers.set(key, (ledger = ledgerOf(window, needs, this.#plan.rules)));
    return ledger;
  }

  /** What a list of activities is, whatever the windows. The list must not change. */
  skeleton(activities: readonly Activity[]): Skeleton {
    let known = this.#skeletons.get(activities);
    if (!known) this.#skeletons.set(activities, (known = skeletonOf(activities)));
    return known;
  }

  /** Quick states of some work by the shape of the window, as far as they are known. */
  statesBy(skeleton: Skeleton): Map<string, number> {
    let known = this.#states.get(skeleton);
    if (!known || known.size > MOST_SHAPES)
      this.#states.set(skeleton, (known = new Map<string, number>()));
    return known;
  }
}

const neverCured: MaturityCurve = {
  readyAt: () => Number.POSITIVE_INFINITY,
  latestPour: () => Number.NEGATIVE_INFINITY,
};
