import type { Reason } from '../../planner/fit/types.js';
import type { PlanFault } from '../../verify/index.js';

/** What the work is like for which a window's usable time is told; `isolated` means all the sections it isolates. */
export const workKinds = ['ordinary', 'isolated', 'loud', 'isolated-loud'] as const;
/** For which work usable time is told: with its line dead or not, loud or not. */
export type WorkKind = (typeof workKinds)[number];

/** Usable minutes of a window for one kind of work, by the rules before and after. A barred window has none. */
export interface UsableChange {
  readonly window: string;
  readonly work: WorkKind;
  /** Minutes. */
  readonly usableBefore: number;
  /** Minutes. */
  readonly usableAfter: number;
  /** What it gains; below 0 what it loses. */
  readonly minutes: number;
}

/** A window that a package fits only by the rules after. */
export interface GainedFit {
  readonly package: string;
  readonly window: string;
  /** By the rules after; null as in a verdict. */
  readonly spareMinutes: number | null;
}

/** A window that a package fits only by the rules before. */
export interface LostFit {
  readonly package: string;
  readonly window: string;
  /** Why it no longer fits, by the rules after. */
  readonly reasons: readonly Reason[];
}

/** A package whose count of windows that it fits on its own has changed, or that fits other windows. */
export interface PackageChange {
  readonly package: string;
  readonly windowsBefore: number;
  readonly windowsAfter: number;
}

/** Fits that other rules give and take. */
export interface FitsChange {
  readonly gained: readonly GainedFit[];
  readonly lost: readonly LostFit[];
  /** Only those with a fit gained or lost, in plan order. */
  readonly packages: readonly PackageChange[];
  /** Packages that fitted some window before and fit none now. */
  readonly nowhere: readonly string[];
  /** Packages that fitted no window before and fit one now. */
  readonly somewhere: readonly string[];
  /**
   * What the independent check finds wrong with those gained, and which of those lost break no rule as they were placed
   * before. It does not look for another place for what is lost.
   */
  readonly faults: readonly PlanFault[];
}

/** What other rules do to a plan. */
export interface RuleChange {
  /**
   * Every window in plan order, for each kind of work it can take, whether or not anything changes. `isolated` kinds
   * stand only where the window isolates a section.
   */
  readonly windows: readonly UsableChange[];
  /** Null while the verdicts are not yet worked out. */
  readonly fits: FitsChange | null;
}
