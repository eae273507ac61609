import type { Worded } from '../../model/index.js';
import type { Allocation } from '../search/types.js';

/** Something of a plan made before that does not hold in the plan as it is now. */
export interface Broken extends Worded {
  readonly activity: string;
  /** kebab-case, stable. */
  readonly code: string;
}

/** What of a plan of work that was made before stands in the plan as it is now, and what nobody said of it. */
export interface StandingPlan extends Pick<Allocation, 'placements' | 'unstated' | 'notes'> {
  /** Empty where all of it holds. */
  readonly broken: readonly Broken[];
}

/** A plan of work that was made before, held against the plan as it is now. */
export interface GivenPlan {
  /** Of all its placements, those that do not stand any more among them. */
  readonly id: string;
  /** Empty where all of it holds. */
  readonly broken: readonly Broken[];
  /** Of the placements that still stand. Its certificate promises nothing where something is broken. */
  readonly allocation: Allocation;
}
