import type { Instant } from '../calendar/index.js';
import type { Commitment, GoPoint, Reasoned, WindowStatus, Worded } from '../model/index.js';
import type { ThreePoint, ThreePointKind } from './kernel/distribution.js';
import type { LeftOpen } from './line/left-open-types.js';
import type { Chance, DeadlineOutlook } from './kernel/simulation.js';

/** Held: at least what is required. Eaten: less, but not late. Overrun: handed back after the booked end. */
export type MarginVerdict = 'held' | 'eaten' | 'overrun';

/**
 * The one verdict of a window. Held only where the margin keeps what is required and the chance of handing back on time
 * reaches the chance wanted, where one is; `chance-low` where the chance alone is short.
 */
export type WindowVerdict = MarginVerdict | 'chance-low';

/** A thing that may happen and costs time. Exactly one of `activity`, `step` and `at` says what it holds up. */
export interface PlanEvent {
  readonly name: string;
  readonly probability: number;
  /** Minutes; `recorded`: as long as recorded overruns were. */
  readonly delay: ThreePoint | 'recorded';
  /** Lengthens this activity. */
  readonly activity?: string;
  /** Lengthens this lead-in or lead-out step; `grantStep` for a late grant, `handedBackStep` for a late handback. */
  readonly step?: string;
  /** Which step is meant where one of the lead-in and one of the lead-out are called alike; absent: both. */
  readonly stage?: Stage;
  /** Stops all work from this moment on. */
  readonly at?: Instant;
}

/** Name under which the granting of the possession stands among the steps. */
export const grantStep = 'Possession granted';

/** Name under which giving the line back stands among the steps: an event on it delays the handback itself. */
export const handedBackStep = 'Line handed back';

/** Name under which the granting of one line stands among the steps, where lines are granted one by one. */
export const lineGrantStep = (line: string): string => `Line ${line} granted`;

/** The line whose granting a step is; undefined for any other step. */
export const lineOfGrant = (step: string): string | undefined =>
  /^Line (.*) granted$/s.exec(step)?.[1];

/** On which side of the work a step stands. */
export type Stage = 'lead-in' | 'lead-out';

/** What has been seen of a step or an activity during the shift. */
export interface Actual {
  readonly activity?: string;
  readonly step?: string;
  /** Where a step of the lead-in and one of the lead-out are called alike; absent: the one of the lead-in. */
  readonly stage?: Stage;
  readonly startedAt?: Instant;
  readonly finishedAt?: Instant;
  /** Units finished in this window, and when the last of them was. */
  readonly unitsDone?: number;
  readonly unitsAt?: Instant;
  /** A fresh estimate of what was left at the moment asked about, from the people doing it. */
  readonly minutesLeft?: ThreePoint;
  /** Of the granting of a line: when it is said to come. */
  readonly expectedAt?: Instant;
  /** Of the handback: when the line was asked for, before its booked end. */
  readonly wantedBy?: Instant;
  /** Of the handback: the end that was agreed, earlier than the booked one. It counts in its place. */
  readonly agreedEnd?: Instant;
}

export interface HandbackOptions {
  readonly seed: number;
  readonly runs: number;
  /** Shape of three-point durations; absent: triangular. */
  readonly distribution?: ThreePointKind;
  readonly events?: readonly PlanEvent[];
  /** A shared cause that lengthens all work by one factor, e.g. 0.9, 1, 1.3. */
  readonly commonFactor?: ThreePoint;
  readonly commitments?: readonly Commitment[];
  /** Those of other windows are passed over. */
  readonly goPoints?: readonly GoPoint[];
  /** No work before its planned start, even if all it waits for is done. */
  readonly holdPlannedStarts?: boolean;
  /** Moment of the forecast; what is not in `actuals` is then taken as not begun. Absent: before the window. */
  readonly at?: Instant;
  readonly actuals?: readonly Actual[];
  /** Activities that the records of earlier shifts say were begun: what makes them good is never left out. */
  readonly begunBefore?: readonly string[];
  /** Chance wanted of handing back on time; absent: that of the plan's rules, or none. */
  readonly confidence?: number;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (runsDone: number, runs: number) => void;
}

/**
 * An example to measure a shift against where nobody says what chance is wanted: told with every answer that uses it,
 * and never a ground for a verdict.
 * @see RAIL feature and peer review of high-profile possession work: "about 95 %" (values 5.3, verified there); a setting.
 */
export const defaultConfidence = 0.95;

/** By when a step or a piece of work must start and finish. */
export interface CutOff {
  readonly kind: 'lead-in' | 'work' | 'lead-out';
  /** Name of the step, or title of the activity. */
  readonly name: string;
  readonly activity?: string;
  readonly plannedStart: Instant;
  readonly plannedFinish: Instant;
  /** Latest that still keeps the required margin. */
  readonly latestStart: Instant;
  readonly latestFinish: Instant;
  /** Latest that still hands back at the booked end. */
  readonly onTimeStart: Instant;
  readonly onTimeFinish: Instant;
  /**
   * Begun by then, all that must follow is over by the booked end with the chance wanted (the example where none is).
   * Null where it was not worked out.
   */
  readonly chanceStart: Instant | null;
  /** Standard error of `chanceStart` in minutes. */
  readonly chanceErrorMinutes: number | null;
  /** Minutes from the planned start to `latestStart`; below 0 when the margin is already eaten. */
  readonly slackMinutes: number;
  readonly state: 'to-come' | 'begun' | 'done';
}

/** A lead-in or lead-out step, or all of an activity in the window. */
export interface Subject {
  readonly kind: CutOff['kind'];
  /** Name of the step, or title of the activity. */
  readonly name: string;
  readonly activity?: string;
}

/** A moment at which somebody says whether the work goes on. */
export interface GoPointTime {
  readonly id: string;
  readonly name: string;
  readonly holder: string;
  readonly at: Instant;
  /** The work it comes before, which set the moment; absent: a person set it. */
  readonly before?: string;
  /** Work that is not planned to be over by then and whose point of no return, or cut-off, is earlier. */
  readonly tooLateFor: readonly string[];
}

export interface DecisionPoint {
  readonly activity: string;
  /** Latest start of irreversible work that leaves room for all that must follow, margin included. Null: reversible. */
  readonly pointOfNoReturn: Instant | null;
  /** Latest moment to abandon it, put the railway back, lead out and keep the margin. Null: not asked about. */
  readonly latestAbort: Instant | null;
}

export interface UnitChance {
  /** Units done in the window, those already in place included. */
  readonly units: number;
  readonly onTime: Chance;
}

/** For one repeated work of a window: the chance of handing back on time by how many of its units are done. */
export interface UnitOutlook {
  readonly activity: string;
  readonly chances: readonly UnitChance[];
  /** Most units with which the confidence aimed at is reached; 0 when even the fewest miss it. */
  readonly unitsWithinConfidence: number;
}

/** Repeated work and how many units of it are done in this window when it stops. */
export interface StopsAt {
  readonly activity: string;
  readonly units: number;
}

/** A way on from this moment of the shift. */
export interface LiveOption {
  /** The repeated work it is about; absent: none, or all that may be left out. */
  readonly activity?: string;
  /** Units of it done in this window when it stops. */
  readonly units?: number;
  /** How many of those are still to be done: 0 to stop now. */
  readonly more?: number;
  /** Activities left out altogether. */
  readonly leaveOut: readonly string[];
  /** Other repeated work that stops short. */
  readonly alsoStop: readonly StopsAt[];
  readonly onTime: Chance;
  readonly marginMinutes: number;
  /** Reaches the chance wanted. */
  readonly reaches: boolean;
  /** What must be so for it, in words; empty: nothing beside what is planned. */
  readonly condition: string;
  readonly conditioned?: Worded['sentence'];
}

/** Work that is not offered to be left out though the shift runs late, with the reason. */
export interface NotOffered extends Reasoned {
  readonly activity: string;
}

/** One line for the person who runs the shift. */
export interface Advice extends Reasoned {
  /** `over`: the line has been handed back. */
  readonly say: 'stop' | 'carry-on' | 'more' | 'over';
  /** The repeated work that `more` counts; null where none is going on or to come. */
  readonly activity: string | null;
  /** Units still to be done of it; 0 for `stop`; null where no units are to be counted. */
  readonly more: number | null;
  /** Activities to be left out altogether. */
  readonly leaveOut: readonly string[];
  /** Other repeated work that is to stop short. */
  readonly alsoStop: readonly StopsAt[];
}

export interface HandbackSimulation {
  readonly runs: number;
  readonly seed: number;
  readonly stopped: boolean;
  readonly outlook: DeadlineOutlook;
  /** Nearest-rank P-values of the handback, up to the next whole minute. */
  readonly p50: Instant;
  readonly p80: Instant;
  readonly p90: Instant;
  readonly p95: Instant;
  /** Minutes from the window's start to handback, of every run, ascending. For curves and for prices. */
  readonly handbackMinutes: Float64Array;
  /** How often the length of each activity or step decided the handback. */
  readonly criticality: readonly (Subject & { readonly share: number })[];
  /** What it would bring to hold one at its least length (all units of it), the most helpful first; none where no run is late. */
  readonly helpsMost: readonly (Subject & {
    readonly probabilityGain: number;
    readonly meanGainMinutes: number;
  })[];
}

/** Something that was recorded and cannot be so, or was not recorded and had to be taken for granted. */
export interface Doubt extends Worded {
  readonly code:
    | 'not-granted'
    | 'line-not-granted'
    | 'line-not-here'
    | 'not-here'
    | 'not-repeated'
    | 'more-units'
    | 'not-yet'
    | 'before-window'
    | 'asked-too-late'
    | 'agreed-too-late'
    | 'handed-back-open';
}

/** The line was asked for before its booked end: how the shift stands against that. */
export interface AskedBack {
  readonly by: Instant;
  readonly onTime: Chance;
  readonly marginLeftMinutes: number;
  readonly advice: Advice;
}

/** State of the handback at a moment in the shift. */
export interface LiveForecast {
  readonly at: Instant;
  /** When the line was handed back; null: not yet. */
  readonly handedBackAt: Instant | null;
  /** Null where nobody asked for the line early. */
  readonly askedBack: AskedBack | null;
  readonly doubts: readonly Doubt[];
  /** Handback when all that is left takes its most likely time from now on. */
  readonly forecastHandback: Instant;
  readonly marginLeftMinutes: number;
  readonly marginVerdict: MarginVerdict;
  readonly verdict: WindowVerdict;
  /** What starts next in the planned order; null when all has begun. */
  readonly next: CutOff | null;
  /** The earliest cut-off that has not passed; null when none is left. */
  readonly nextCutOff: CutOff | null;
  /** Not begun, and the cut-off that keeps the margin has passed. */
  readonly passedCutOffs: readonly CutOff[];
  /** Begun work that has outrun its longest estimate: counted as about to finish, so ask for a fresh estimate. */
  readonly beyondEstimate: readonly string[];
  readonly advice: Advice;
  /** As planned first; then by repeated work, stopping now included, and by what may wait. */
  readonly options: readonly LiveOption[];
  readonly notOffered: readonly NotOffered[];
}

/** How a window stands against its booked end. */
export interface HandbackResult extends LeftOpen {
  readonly window: string;
  readonly status: WindowStatus;
  /** Short text that changes with anything the result was worked out from, so that two sheets can be told apart. */
  readonly inputsStamp: string;
  /** The booked end; the earlier one where the shift has agreed to it. Everything here is held against it. */
  readonly bookedEnd: Instant;
  /** The end as it was booked, where an earlier one was agreed in the shift; null: the booked end stands. */
  readonly bookedBefore: Instant | null;
  /** Finish of the last inside work as planned; the window's start when there is none. */
  readonly plannedClear: Instant;
  /** From the planned clear time to handback. */
  readonly leadOutMinutes: number;
  readonly plannedHandback: Instant;
  /** Booked end - (planned clear + lead-out). */
  readonly marginMinutes: number;
  readonly requiredMinutes: number;
  /** The margin held against what is required, by itself; during the shift, of the margin left. */
  readonly marginVerdict: MarginVerdict;
  readonly verdict: WindowVerdict;
  /** Null where neither the rules nor the request say one. */
  readonly chanceWanted: number | null;
  /** So close to the chance wanted that other runs may well say otherwise; false where none is wanted. */
  readonly chanceIsClose: boolean;
  /** The chance wanted, or the example where none is. */
  readonly confidence: number;
  /**
   * Margin with which `confidence` would be reached were the booked end that much later; 0 or more. Counted from the
   * planned handback, during the shift from its forecast.
   */
  readonly marginForChanceMinutes: number;
  /** In time order of their planned start. */
  readonly cutOffs: readonly CutOff[];
  readonly decisions: readonly DecisionPoint[];
  /** In time order. */
  readonly goPoints: readonly GoPointTime[];
  readonly simulation: HandbackSimulation;
  readonly units: readonly UnitOutlook[];
  /** Null without `at`. */
  readonly live: LiveForecast | null;
}
