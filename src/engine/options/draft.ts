import type { Plan, PlanDocument, Train } from '../../model/index.js';
import type { WindowWork } from './costs.js';
import type { Planned } from './plans.js';
import type { Situation } from './situation.js';
import type { OptionKind, OptionPart, RefusedOption } from './types.js';

/** An option scheduled, not yet simulated. */
export interface Draft extends Planned {
  readonly id: string;
  readonly kind: OptionKind;
  readonly name: string;
  readonly changes: readonly string[];
  readonly document: PlanDocument;
  readonly plan: Plan;
  readonly trains: readonly Train[];
  /** The window as it then is, and what takes its place beside it. */
  readonly here: readonly WindowWork[];
  /** Costs that are the same in every run, beside the plant and labour of the plan. */
  readonly lines: readonly OptionPart[];
  readonly turn?: Turn;
  readonly notes: readonly string[];
}

/** The price at which an option turns from cheaper to dearer. */
export interface Turn {
  /** What it is a price of: `The further 60 min`. */
  readonly what: string;
  /** What of the total is such a price now, in smallest coins. */
  readonly minor: number;
  /** The same for one of so many. */
  readonly each?: { readonly count: number; readonly word: string };
}

/** As planned: what the others are held against. */
export function asPlanned(at: Situation): Draft {
  return {
    id: 'as-planned',
    kind: 'as-planned',
    name: 'As planned',
    changes: [],
    document: at.document,
    plan: at.plan,
    trains: at.trains,
    here: [at.planned],
    placements: at.planned.placements,
    unplaced: [],
    keyDates: [],
    lines: [],
    notes: [],
  };
}

/** A way of doing the work that is not to be had, with why. */
export const refused = (
  id: string,
  kind: OptionKind,
  name: string,
  state: RefusedOption['state'],
  reason: string,
): RefusedOption => ({ id, kind, name, state, reason });

/** Why work finds no place, activity by activity. */
export function reasonOf(unplaced: Draft['unplaced']): string {
  return unplaced
    .map(
      (item) =>
        `${item.activity} finds no place: ${item.reasons.map((each) => each.text).join('; ')}.`,
    )
    .join(' ');
}
