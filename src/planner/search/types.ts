import type { Instant } from '../../calendar/index.js';
import type { Note, PlanFault, Worded } from '../../model/index.js';
import type { Unstated } from '../unstated.js';
import type { Placement, Reason } from '../fit/types.js';

/** What a search may put first. */
export type Objective = 'key-dates' | 'margins' | 'finish' | 'fewest-windows';

export interface ObjectiveValue {
  readonly name: Objective;
  /** key-dates: minutes late, summed; margins: minutes of margin eaten; finish: minutes from plan start to the last finish; fewest-windows: windows used. */
  readonly value: number;
  readonly lowerBound: number;
  readonly proven: boolean;
}

/**
 * What is known of an answer's quality. `objective`, `lowerBound` and `proven` speak of the first objective; `text`:
 * `proven best` or `best found, at most 2 windows from best`.
 */
export interface Certificate extends Worded {
  readonly proven: boolean;
  readonly lowerBound: number;
  readonly objective: number;
  /** It is certain that no more can be placed. */
  readonly mostPlaced: boolean;
  /** The search was ended before its work was done: another machine, or this one later, may come to another answer. */
  readonly cutShort: boolean;
  /** Nothing that was to be kept is at odds with the plan as it is now. */
  readonly holds: boolean;
  /** The independent check found no fault. `false` until it has looked: the search cannot say it of itself. */
  readonly verified: boolean;
  /** What the check found; absent until it has looked. */
  readonly faults?: readonly PlanFault[];
  readonly objectives: readonly ObjectiveValue[];
  /** Digest of all that the plan hangs on beside its placements: of these inputs this is known; absent until checked. */
  readonly inputs?: string;
}

/** One key date: when it is due, when its package finishes as planned, and the float between. Moments are epoch milliseconds. */
export interface KeyDateForecast {
  readonly package: string;
  readonly due: Instant;
  /** When the package is forecast to finish; null while some of it is not placed. */
  readonly forecast: Instant | null;
  /**
   * How far the finish can slip, in days and nights, before a key date is missed or work finds no time, with what comes
   * after pushed on as little as it must be; minus the minutes late where the date is missed.
   */
  readonly floatMinutes: number | null;
  /** More float may be possible: the plan is too large to push everything on. Absent: it is not. */
  readonly floatAtLeast?: true;
  /** Whole windows (that could take some of the package) between the forecast and the end of its float. */
  readonly floatWindows: number | null;
  readonly met: boolean;
  /**
   * Other packages with a key date that this one waits for or that wait for it, through links: what one of them
   * spends of its float the other may miss. Packages that only compete for plant are not named.
   */
  readonly sharesFloatWith: readonly string[];
}

export interface Unplaced {
  readonly activity: string;
  readonly reasons: readonly Reason[];
}

/** Times and floats of one placed activity. Minutes are elapsed clock minutes unless `floatIs` says working. */
export interface ActivityFloat {
  readonly activity: string;
  readonly earliestStart: Instant;
  readonly earliestFinish: Instant;
  readonly latestStart: Instant;
  readonly latestFinish: Instant;
  readonly totalFloatMinutes: number;
  readonly freeFloatMinutes: number;
  readonly floatIs: 'working' | 'clock';
  readonly critical: boolean;
  /**
   * How far its finish can slip, in later windows too, before a key date is missed or work finds no time, with what comes
   * after pushed on. Absent: nothing ends it, or the plan is too large to look at each.
   */
  readonly slipMinutes?: number;
}

/**
 * A plan of work: each piece in its window with its times, what found no place and why, key dates, floats, and how good the
 * plan is shown to be. `finishesAt`: epoch milliseconds of the last finish; null while something has no place.
 */
export interface Allocation {
  readonly placements: readonly Placement[];
  readonly unplaced: readonly Unplaced[];
  readonly finishesAt: Instant | null;
  readonly windowsUsed: number;
  readonly keyDates: readonly KeyDateForecast[];
  readonly certificate: Certificate;
  readonly floats: readonly ActivityFloat[];
  /** What nobody said of the placements: told before all that is said of how good the plan is. */
  readonly unstated: readonly Unstated[];
  /** Other things that the answer rests on and that nobody said. */
  readonly notes: readonly Note[];
}
