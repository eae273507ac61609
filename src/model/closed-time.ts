import type { IntervalSet } from '../calendar/index.js';
import type { Instant } from '../calendar/index.js';
import type { Curfew, RuleSet } from './rule-set.js';
import type { Worded } from './sentence.js';
import type { ConcreteSettings } from './site.js';

/**
 * Time closed to some of the work: too windy to lift, too loud for the neighbours. Work heeds it when its `heeds`
 * names it. In a ledger it is a curfew row of its own rule.
 */
export interface ClosedTime {
  /** The name by which work heeds it. */
  readonly name: string;
  /** The heading of its row in a ledger. */
  readonly rule: Worded;
  /** Why, in a sentence with its figures. */
  readonly why: Worded;
  readonly stretches: IntervalSet;
  /** Bands that come back, by the clocks of each window. Their `bars` is ignored. */
  readonly daily: readonly Curfew[];
}

/** A rule set with the time that the site closes to some of the work. */
export type PlanRules = RuleSet & { readonly closed?: readonly ClosedTime[] };

/** A temperature that holds from `start` to `end`. */
export interface TemperatureStretch {
  readonly start: Instant;
  readonly end: Instant;
  readonly celsius: number;
}

/** What the end of curing is computed from. */
export interface CuringData {
  readonly settings: ConcreteSettings;
  /** In time order and without overlaps; there may be gaps. */
  readonly temperatures: readonly TemperatureStretch[];
}
