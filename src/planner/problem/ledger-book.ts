import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Activity, Needs, Plan } from '../../model/index.js';
import { maturityCurve, type MaturityCurve } from '../../rules/conditions/index.js';
import { ledgerOf } from '../../rules/index.js';
import type { Ledger } from '../../rules/types.js';
import type { Slot } from './problem.js';
import { minutesDown, minutesUp, skeletonOf, type Skeleton } from './skeleton.js';
import { SupplyBook } from './supply-book.js';

/** Stretches of usable time of one window in whole minutes after its own start. */
interface Usable {
  /** Whole minutes since 1970 at which the window starts. */
  readonly base: number;
  readonly slots: readonly Slot[];
  /** Whether the window takes no such work at all. */
  readonly barred: boolean;
  /** Equal where slots and `barred` are: such windows are alike to such work. */
  readonly shape: string;
}

/** Shapes of windows up to which answers are kept, so that edits without end do not fill the memory. */
const MOST_SHAPES = 2000;

interface Kept {
  readonly ledgers: Map<string, Ledger>;
  readonly usable: Map<string, Usable>;
}

/**
 * What problems of one plan have in common, each worked out once: ledgers of its windows, also of windows made longer
 * by whole minutes, their usable time, what there is of its resources, and what sets of its activities are.
 */
export class LedgerBook {
  readonly supplies: SupplyBook;
  readonly #plan: Plan;
  readonly #kept: WeakMap<AccessWindow, Kept>;
  // Not taken over from another book: what there is of resources may differ.
  readonly #states = new WeakMap<Skeleton, Map<string, number>>();
  #curve: MaturityCurve | undefined;
  #endless: LedgerBook | undefined;
  readonly #skeletons: WeakMap<readonly Activity[], Skeleton>;

  /** `like`: the book of a plan with the same rules, zone and curing, of which everything else is taken over. */
  constructor(plan: Plan, like?: LedgerBook) {
    this.#plan = plan;
    this.#kept = like ? like.#kept : new WeakMap<AccessWindow, Kept>();
    this.#skeletons = like ? like.#skeletons : new WeakMap<readonly Activity[], Skeleton>();
    this.supplies = new SupplyBook(plan.resources, plan.zone);
  }

  /** The book of the same plan if shifts had no end. */
  withoutShifts(): LedgerBook {
    const { shifts: _, ...rules } = this.#plan.rules;
    return (this.#endless ??= new LedgerBook({ ...this.#plan, rules }));
  }

  /** When concrete has cured; never, where the plan does not say how it does. */
  get curve(): MaturityCurve {
    const { curing } = this.#plan;
    return (this.#curve ??= curing ? maturityCurve(curing) : neverCured);
  }

  of(window: AccessWindow, needs: Needs, longerBy = 0): Ledger {
    const { ledgers } = this.#keptOf(window);
    const key = keyOf(needs, longerBy);
    let ledger = ledgers.get(key);
    if (!ledger) {
      const longer = longerBy === 0 ? window : { ...window, end: window.end + longerBy * MINUTE };
      ledger = ledgerOf(longer, needs, this.#plan.rules);
      ledgers.set(key, ledger);
    }
    return ledger;
  }

  /** Usable time of a window, of those it takes at all. */
  usable(window: AccessWindow, needs: Needs, longerBy: number): Usable {
    const { usable } = this.#keptOf(window);
    const key = keyOf(needs, longerBy);
    let known = usable.get(key);
    if (!known) {
      const ledger = this.of(window, needs, longerBy);
      const base = Math.floor(window.start / MINUTE);
      const slots = ledger.usable
        .map((one) => ({
          window: 0,
          start: minutesUp(one.start, base * MINUTE),
          end: minutesDown(one.end, base * MINUTE),
        }))
        .filter((slot) => slot.end > slot.start);
      const barred = ledger.barred.length > 0;
      const shape = `${barred ? 'barred' : ''}${slots.map((one) => `${one.start}-${one.end}`).join()}`;
      known = { base, slots, barred, shape };
      usable.set(key, known);
    }
    return known;
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

  #keptOf(window: AccessWindow): Kept {
    let kept = this.#kept.get(window);
    if (!kept) {
      kept = { ledgers: new Map<string, Ledger>(), usable: new Map<string, Usable>() };
      this.#kept.set(window, kept);
    }
    return kept;
  }
}

const neverCured: MaturityCurve = {
  readyAt: () => Number.POSITIVE_INFINITY,
  latestPour: () => Number.NEGATIVE_INFINITY,
};

/** As `needsKey`, but quick for needs of at most one section. */
function keyOf({ isolation, loud, heeds = [] }: Needs, longerBy: number): string {
  const plain = isolation.length < 2 && heeds.length < 2;
  return plain
    ? `${longerBy}${loud ? '!' : ' '}${isolation[0] ?? ''}\u0000${heeds[0] ?? ''}`
    : `${longerBy}${loud ? '!' : ' '}${JSON.stringify([isolation.toSorted(), heeds.toSorted()])}`;
}
