import type { Instant, Interval, IntervalSet } from '../../calendar/index.js';
import type {
  ConcreteSettings,
  Fault,
  LiftingSettings,
  LimitSet,
  NoiseSettings,
  Reasoned,
  Weekday,
} from '../../model/index.js';
import type { Breach, CrewPlan, Mend } from '../../rules/people/index.js';
import type { ActivityNoise, ConsentDates } from '../../rules/noise/index.js';
import type { LiftingHours } from '../../rules/conditions/index.js';
import type { Placement } from '../../planner/fit/types.js';

/** By what limits a roster is judged. */
export interface PeopleRequest {
  /** Absent: those of the document's site, else the example that comes with the project. */
  readonly limits?: LimitSet;
}

/** One turn of the roster as it is counted. */
export interface RosterTurn extends Interval {
  readonly id: string;
  readonly crew: string;
  readonly window?: string;
  /** What it needs, where the roster says. */
  readonly competence?: readonly string[];
  readonly travelMinutes: number;
  /** Real minutes from start to end. */
  readonly elapsedMinutes: number;
  /** What the clocks show between start and end; not the same on a night on which they change. */
  readonly clockMinutes: number;
}

/** A breach with the changes that end it. */
export interface RosterBreach extends Breach {
  /** The smallest first; each was tried and checked. Empty: no change of one turn ends it without another breach. */
  readonly mends: readonly Mend[];
}

/** What manning one window takes, and what the roster gives it. */
export interface WindowCrews {
  readonly window: string;
  /** Crews, their turns back to back and the time they hand over in; null without a longest turn to go by. */
  readonly plan: CrewPlan | null;
  /** Crews of the roster with a turn in the window, or marked as its. */
  readonly rostered: readonly string[];
  /** Time of the window in which no turn of the roster runs; all of it where there is no roster. */
  readonly unmanned: IntervalSet;
}

/** A roster held to limits on hours, and the crews that the windows take. */
export interface PeopleAnswer {
  readonly limits: LimitSet;
  /** Whether the limits are the example and not the user's own. */
  readonly isExample: boolean;
  readonly zone: string;
  /** By crew, then time. */
  readonly turns: readonly RosterTurn[];
  readonly breaches: readonly RosterBreach[];
  /** Changes that one after another cure the roster, and what they leave. */
  readonly together: { readonly changes: readonly Mend[]; readonly left: number };
  /** Withdrawn windows are left out. */
  readonly windows: readonly WindowCrews[];
  readonly faults: readonly Fault[];
  readonly caution: string;
}

/** By what limits noise is judged. */
export interface NoiseRequest {
  /** The moment that dates for an application are told of; absent: none are. */
  readonly now?: Instant;
  /** Absent: those of the document's site, else an example. */
  readonly settings?: NoiseSettings;
}

/** A stretch of one day of the week, in minutes after midnight. */
export interface LoudStretch {
  readonly day: Weekday;
  /** Minutes from the local midnight at which the day begins. */
  readonly from: number;
  /** Minutes from that midnight. */
  readonly to: number;
  /** Null where no limit is given for the hour. */
  readonly period: string | null;
  readonly levelDb: number | null;
  readonly limitDb: number | null;
  /** Above 0: over the limit. */
  readonly overDb: number | null;
}

/** How loud one activity is where people live, hour by hour. Levels are decibels. */
export interface NoiseOfActivity extends ActivityNoise {
  readonly title: string;
  readonly package: string;
  /** Whether the plan marks it as loud. */
  readonly loud: boolean;
  /** Every minute of a week, Monday first, in order. */
  readonly week: readonly LoudStretch[];
}

/** In which hours work may be loud, and by when to apply where it may not. */
export interface NoiseAnswer {
  readonly settings: NoiseSettings;
  /** Whether the settings are the example and not the user's own. */
  readonly isExample: boolean;
  /** Activities that are loud or have plant of the list. */
  readonly activities: readonly NoiseOfActivity[];
  /** By when to apply for prior consent, one a window that is not withdrawn; empty without `now`. */
  readonly consent: readonly (ConsentDates & { readonly window: string; readonly zone: string })[];
  readonly faults: readonly Fault[];
  readonly caution: string;
}

/** What wind and curing are judged by. */
export interface LiftingRequest {
  /** Absent: those of the document's site, else examples, which bear on no plan. */
  readonly lifting?: LiftingSettings;
  readonly concrete?: ConcreteSettings;
  /** When concrete is placed: from a plan of the work. */
  readonly placements?: readonly Placement[];
  /** Or as asked: activity and the moment its pour is over. */
  readonly pours?: readonly { readonly activity: string; readonly at: Instant }[];
}

/** What wind leaves of one window. */
export interface WindOfWindow extends LiftingHours, Interval {
  readonly window: string;
  readonly zone: string;
}

/** The forecast against the limit for lifting. */
export interface WindAnswer {
  readonly settings: LiftingSettings;
  readonly isExample: boolean;
  /** In metres a second: the chart's, or less for a load that catches more wind. */
  readonly limitMps: number;
  /** Gust at height, by the forecast; null where a row gives no wind. */
  readonly gusts: readonly (Interval & { readonly gustMps: number | null })[];
  /** Time in which lifting is stopped, with its reason; waits included. */
  readonly stops: readonly (Interval & Reasoned)[];
  /** Windows that the forecast reaches. */
  readonly windows: readonly WindOfWindow[];
  /** Activities that lift. */
  readonly activities: readonly string[];
}

/** Concrete from its pour on. */
export interface CuringOfPour {
  readonly activity: string;
  /** Work that waits for it. */
  readonly followers: readonly string[];
  readonly pouredAt: Instant;
  /** Null where the temperatures do not reach so far. */
  readonly readyAt: Instant | null;
  /** Maturity that it must reach, in the `unit` of the answer. */
  readonly needed: number;
  /** A fixed gap that the plan keeps instead, or on top; null: none. */
  readonly gapMinutes: number | null;
  /** Maturity along time, from the pour to a while past the moment it is ready, or to where nothing more is known. */
  readonly curve: readonly { readonly at: Instant; readonly maturity: number }[];
  /** Time up to `readyAt` for which no temperature was given and that of the settings was taken. */
  readonly assumed: IntervalSet;
}

/** When concrete has cured. */
export interface ConcreteAnswer {
  readonly settings: ConcreteSettings;
  readonly isExample: boolean;
  /** Of maturity: `°C h`, or `h` at the reference temperature. */
  readonly unit: string;
  readonly pours: readonly CuringOfPour[];
  /** Activities whose curing is waited for, by a link or by a gap of 12 h or more; those without a time are not in `pours`. */
  readonly waitedFor: readonly string[];
}

/** What wind and cold do to a plan. */
export interface LiftingAnswer {
  readonly zone: string;
  readonly wind: WindAnswer;
  readonly concrete: ConcreteAnswer;
  readonly faults: readonly Fault[];
  readonly cautions: readonly string[];
}
