import type { IntervalSet } from '../calendar/index.js';
import type { Instant } from '../calendar/index.js';
import type { Curfew, RuleSet } from './rule-set.js';
import type { ConcreteSettings } from './site.js';

/**
 * Time closed to some of the work: too windy to lift, too loud for the neighbours. Work heeds it when its `heeds`
 * names it. In a ledger it is a curfew row of its own rule.
 */
export interface ClosedTime {
  /** What work that heeds it names. */
  readonly name: string;
  /** As a ledger's row is headed. */
  readonly rule: string;
  /** Why, in a sentence with its figures. */
  readonly why: string;
  readonly stretches: IntervalSet;
  /** Bands that come back, by the clocks of each window; what they bar is not looked at. */
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

/** What a link that waits for concrete to cure is worked out from. */
export interface CuringData {
  readonly settings: ConcreteSettings;
  /** In time order, none over another; there may be gaps. */
  readonly temperatures: readonly TemperatureStretch[];
}
