import {
  joined,
  type Phrase,
  type Plan,
  type PlanDocument,
  type Train,
} from '../../model/index.js';
import type { WindowWork } from './costs.js';
import type { Planned } from './plans.js';
import { sayOption } from './say-option.js';
import type { Situation } from './situation.js';
import type { OptionKind, OptionPart, RefusedOption } from './types.js';

/** An option scheduled, not yet simulated. */
export interface Draft extends Planned {
  readonly id: string;
  readonly kind: OptionKind;
  readonly name: Phrase;
  readonly changes: readonly Phrase[];
  readonly document: PlanDocument;
  readonly plan: Plan;
  readonly trains: readonly Train[];
  /** The window as it then is, and what takes its place beside it. */
  readonly here: readonly WindowWork[];
  /** Costs that are the same in every run, beside the plant and labour of the plan. */
  readonly lines: readonly OptionPart[];
  readonly turn?: Turn;
  readonly notes: readonly Phrase[];
}

/** The price at which an option turns from cheaper to dearer. */
export interface Turn {
  /** What it is a price of: `The further 60 min`. */
  readonly what: Phrase;
  /** What of the total is such a price now, in smallest coins. */
  readonly minor: number;
  /** The same for one of so many. */
  readonly each?: { readonly count: number; readonly by: 'hour' | 'unit' };
}

/** As planned: what the others are held against. */
export function asPlanned(at: Situation): Draft {
  return {
    id: 'as-planned',
    kind: 'as-planned',
    name: sayOption('as-planned'),
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
  name: Phrase,
  state: RefusedOption['state'],
  reason: Phrase,
): RefusedOption => ({ id, kind, name, state, reason });

/** Why what an option leaves of an activity is not all done. */
export const noPlaceIn = ({ unplaced, unsound }: Draft, activity: string): Phrase =>
  unsound === undefined
    ? reasonOf(unplaced)
    : sayOption('finds-no-place', { activity, reasons: [unsound] });

/** Why work finds no place, activity by activity. */
export const reasonOf = (unplaced: Draft['unplaced']): Phrase =>
  joined(
    unplaced.map((item) => sayOption('finds-no-place', item)),
    ' ',
  );
