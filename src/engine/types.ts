import type { BookingCalendar } from './booking-calendar.js';
import type { Instant } from '../calendar/index.js';
import type { CostCurve, ExpectedCost, KeyDateLine, PriceResult } from '../price/index.js';
import type { HandbackOptions, HandbackResult, ShiftLog } from '../risk/index.js';
import type { PlanToChance } from './handback/plan-to-chance.js';
import type { BookingRules, Milestone } from '../rules/booking/index.js';
import type { Replan, ShortNotice } from '../planner/search/index.js';
import type { Allocation, Objective } from '../planner/search/types.js';
import type { GivenPlan } from '../planner/given/types.js';
import type { FitVerdict, Placement } from '../planner/fit/types.js';
import type { Ledger } from '../rules/types.js';
import type { ExportedFile, ExportFormat, ExportOptions, ResultTable } from '../tables/index.js';
import type { ImportedFile, ImportResult } from './import/types.js';
import type { Account } from '../price/index.js';
import type { AccountRequest } from './account.js';
import type { OptionsAnswer, OptionsRequest } from './options/types.js';
import type {
  LiftingAnswer,
  LiftingRequest,
  NoiseAnswer,
  NoiseRequest,
  PeopleAnswer,
  PeopleRequest,
} from './site/types.js';
import type {
  Fault,
  Needs,
  BookingCount,
  Plan,
  PlanDocument,
  PlanNote,
  RuleSet,
  Sentence,
  TableKind,
  Train,
} from '../model/index.js';
import type { ClaimedFit, PlanFault } from '../verify/index.js';
import type { RuleChange } from './rule-change/types.js';

/** A work package: the activities that carry its name, in file order. */
export interface PackageSummary {
  readonly id: string;
  readonly title: string;
  readonly activities: readonly string[];
  /** What all its inside work together asks for. */
  readonly needs: Needs;
  /** Minutes of inside work left, each piece in one visit, end to end. */
  readonly minutes: number;
  /** Rows of it that could not be read: no verdict of a part speaks for the whole. */
  readonly rowsLeftOut: number;
}

/** By table, the headings that no figure is read from: their cells are kept as they were typed. */
export type UnreadHeadings = { readonly [K in TableKind]?: readonly string[] };

/** Everything that follows from a plan document without a search. */
export interface Results {
  readonly plan: Plan;
  readonly faults: readonly Fault[];
  /** What the plan rests on that nobody said, with counts and the cells. */
  readonly notes: readonly PlanNote[];
  readonly unread: UnreadHeadings;
  /** One a window, for ordinary inside work, in file order. */
  readonly ledgers: readonly Ledger[];
  readonly packages: readonly PackageSummary[];
  /** The trains due after the windows, as far as they could be read. */
  readonly trains: readonly Train[];
  /**
   * Every package against every window; none where these are more than 200,000 pairs. Reasons, placements and the
   * minutes missing are worked out when they are read, `fits` and spare minutes are there at once.
   */
  readonly fits: readonly FitVerdict[];
}

/** How a search for a plan is to go. */
export interface AllocateOptions {
  readonly first?: Objective;
  /** Times the usual work of a search; 1 without. The same document and effort give the same plan on every machine. */
  readonly effort?: number;
  /** How long a search may take: more than the usual work takes gives it more; it says where it was cut short. */
  readonly seconds?: number;
  /** Work that stays where it is, for `allocate` and `replan`; absent: what the document says is frozen of the agreed plan. */
  readonly keep?: readonly Placement[];
}

/** A plan made to a chance: what is searched for first, and the simulation that the chance rests on. */
export interface ChanceOptions extends AllocateOptions {
  /** Chance wanted of handing back on time in every window used, above 0 and below 1. */
  readonly chance: number;
  readonly runs: number;
  readonly seed: number;
}

/** Which windows are to be simulated, and how: runs, seed, and for a shift that is on the moment and what was recorded. */
export interface HandbackRequest extends Pick<
  HandbackOptions,
  | 'seed'
  | 'runs'
  | 'at'
  | 'actuals'
  | 'begunBefore'
  | 'events'
  | 'commitments'
  | 'goPoints'
  | 'commonFactor'
  | 'confidence'
> {
  /** The plan of the work, from `allocate` or from a fit. */
  readonly placements: readonly Placement[];
  /** Only these windows; absent: every window that takes work. */
  readonly windows?: readonly string[];
  /** What was written down during the shift of the one window asked about; takes the place of `actuals`. Needs `at`. */
  readonly log?: ShiftLog;
}

/** Which overrun of which window is to be priced. Durations are whole minutes. */
export interface PriceRequest {
  readonly window: string;
  /** Overrun asked about, whole minutes from 0. */
  readonly overrunMinutes: number;
  /** The curve reaches this far, and further where a run of the simulation did. */
  readonly maxMinutes: number;
  /** Further overruns, each answered in full, to be laid side by side. */
  readonly compareMinutes?: readonly number[];
  readonly placements?: readonly Placement[];
  /** Minutes from the window's start to handback, of every run: `HandbackResult.simulation.handbackMinutes`. */
  readonly handbackMinutes?: Float64Array;
  /** Local dates of public holidays: `2027-08-30`. */
  readonly holidays?: readonly string[];
}

/** What overruns of one window cost. Sums are decimal text in the price book's currency. */
export interface PriceAnswer {
  readonly at: PriceResult;
  /** One for each of `compareMinutes`, in that order; empty without. */
  readonly overruns: readonly PriceResult[];
  /** Decimal text: what one more minute than asked costs, and the mean of the fifteen that follow. */
  readonly nextMinute: { readonly one: string; readonly meanOfFifteen: string };
  readonly curve: CostCurve;
  /** Share of the runs that hand back later than each minute of the curve, from 0 on; null without `handbackMinutes`. */
  readonly chanceLater: readonly number[] | null;
  /** Null without `handbackMinutes`. */
  readonly expected: ExpectedCost | null;
  /** Every key date of the plan, with what missing it costs as planned; absent without `placements`. */
  readonly keyDates?: readonly KeyDateLine[];
  /** The book's thresholds of length held against the closure from its start to the handback asked about. */
  readonly lengths?: readonly {
    readonly code: string;
    readonly name: string;
    readonly exceeded: boolean;
    /** The clock change alone decides: wall-clock times would have given the other answer. */
    readonly clockChangeDecides: boolean;
    readonly sentence: Sentence;
  }[];
}

/** For which moment the booking dates are asked. */
export interface BookRequest {
  /** The moment the state is told of. */
  readonly now: Instant;
  /** Absent: the published lead times that come with the project. */
  readonly rules?: BookingRules;
  /** Share of a day's trains hit, in per cent, by window: in place of what the windows' table says. */
  readonly sharePercent?: Readonly<Record<string, number>>;
}

/** What the booking of one window hangs on. */
export interface BookedWindow {
  readonly window: string;
  /** Consecutive local days touched. */
  readonly days: number;
  /** Null where nobody has said. */
  readonly sharePercent: number | null;
  /** Class of the restriction; null without a share, and then milestones that name classes are left out. */
  readonly restriction: string | null;
  /** Four-week periods it has time in: two for a Saturday night at an edge. */
  readonly periods: readonly string[];
}

/** The booking dates of all windows and how each stands. */
export interface BookAnswer {
  /** Name of the rules used. */
  readonly rules: string;
  /** What lead times of whole weeks were counted back from. */
  readonly weeksFrom: BookingCount['weeksFrom'];
  /** First day of the planning week. */
  readonly weekStarts: BookingCount['weekStarts'];
  readonly milestones: readonly Milestone[];
  /** One a window, in plan order. */
  readonly windows: readonly BookedWindow[];
  /** What a calendar of them is made with. */
  readonly calendar: BookingCalendar;
}

/** One more window is worked out. */
export interface HandbackProgress extends Progress {
  readonly latest: HandbackResult;
}

/** How far a long calculation is: `done` of `total`, in any unit. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** How far a search for a plan is: the part of its work that is done, of 1. */
export interface SearchProgress extends Progress {
  /** The best plan found since this was last told; absent where nothing better was. Its certificate says what is known by then. */
  readonly best?: Allocation;
}

/** The calculation behind the elements. Calls reject only for a bug, an abort or a lost worker; bad data is in the result. */
export interface Engine {
  /**
   * `onOutline` hears of everything but the verdicts, which take longest, as soon as it is known: its `fits` is empty.
   */
  recompute(
    document: PlanDocument,
    signal?: AbortSignal,
    onOutline?: (outline: Results) => void,
  ): Promise<Results>;
  /** Reads files into the document: a table replaces the table of its kind. Rows with faults are kept as typed. */
  importFiles(
    files: readonly ImportedFile[],
    document: PlanDocument,
    signal?: AbortSignal,
    onProgress?: (progress: Progress) => void,
  ): Promise<ImportResult>;
  /** The tables of a plan as files to save: CSV, or one workbook. */
  exportFiles(
    document: PlanDocument,
    options: ExportOptions,
    signal?: AbortSignal,
  ): Promise<readonly ExportedFile[]>;
  /** Any table as a file to save. Rejects with a `RangeError` for a number that is none or a table too large. */
  exportTable(
    table: ResultTable,
    format: ExportFormat,
    signal?: AbortSignal,
  ): Promise<ExportedFile>;
  /** Searches for the best plan. `onProgress` hears of it ten times a second at most, and of the best plan so far. */
  allocate(
    document: PlanDocument,
    options: AllocateOptions,
    signal?: AbortSignal,
    onProgress?: (progress: SearchProgress) => void,
  ): Promise<Allocation>;
  /**
   * Searches for a plan in which every window used hands back on time with the chance wanted, and says what that costs.
   * Rejects with a `RangeError` unless the chance lies between 0 and 1.
   */
  allocateToChance(
    document: PlanDocument,
    options: ChanceOptions,
    signal?: AbortSignal,
    onProgress?: (progress: Progress) => void,
  ): Promise<PlanToChance>;
  /** A plan of work that was made before, held against the document as it is: nothing is moved or searched for. */
  assess(
    document: PlanDocument,
    placements: readonly Placement[],
    signal?: AbortSignal,
  ): Promise<GivenPlan>;
  /** A plan for the document as it is now that moves as few packages of `before` as it can, and what moved and why. */
  replan(
    document: PlanDocument,
    before: Allocation,
    options: AllocateOptions,
    signal?: AbortSignal,
    onProgress?: (progress: Progress) => void,
  ): Promise<Replan>;
  /** The best use of one window of the document that `before` did not know, and what it buys at the key dates. */
  shortNotice(
    document: PlanDocument,
    before: Allocation,
    window: string,
    options: AllocateOptions,
    signal?: AbortSignal,
    onProgress?: (progress: Progress) => void,
  ): Promise<ShortNotice>;
  /** Margins, cut-off times and the chance of handing back on time, one a window, in plan order. */
  handback(
    document: PlanDocument,
    request: HandbackRequest,
    signal?: AbortSignal,
    onProgress?: (progress: HandbackProgress) => void,
  ): Promise<readonly HandbackResult[]>;
  /** What an overrun costs. Rejects with a `RangeError` when the document has no price book or no such window. */
  price(document: PlanDocument, request: PriceRequest, signal?: AbortSignal): Promise<PriceAnswer>;
  /**
   * Ways to do the work of one window side by side, scheduled, simulated and priced. Rejects with a `RangeError` when
   * there is no price book, no such window, or nothing planned in it.
   */
  options(
    document: PlanDocument,
    request: OptionsRequest,
    signal?: AbortSignal,
    onProgress?: (progress: Progress) => void,
  ): Promise<OptionsAnswer>;
  /** The account after a late handback. Rejects with a `RangeError` as `price` does. */
  account(document: PlanDocument, request: AccountRequest, signal?: AbortSignal): Promise<Account>;
  /** What has to be asked, offered and published by when, in plan order. */
  book(document: PlanDocument, request: BookRequest, signal?: AbortSignal): Promise<BookAnswer>;
  /**
   * What other rules would do to the windows and fits of a plan. `onProgress` hears of the windows, with no fits, as soon
   * as they are known.
   */
  compareRules(
    document: PlanDocument,
    rules: RuleSet,
    signal?: AbortSignal,
    onProgress?: (change: RuleChange) => void,
  ): Promise<RuleChange>;
  /** What the independent check finds wrong with fits and the ways they would go: for each a list, empty where it holds. */
  checkFits(
    document: PlanDocument,
    fits: readonly ClaimedFit[],
    signal?: AbortSignal,
  ): Promise<readonly (readonly PlanFault[])[]>;
  /** The roster against the limits on hours, with changes that mend it, and the crews that each window takes. */
  people(
    document: PlanDocument,
    request: PeopleRequest,
    signal?: AbortSignal,
  ): Promise<PeopleAnswer>;
  /** In which hours each activity may be loud, by a screening of its plant. */
  noise(document: PlanDocument, request: NoiseRequest, signal?: AbortSignal): Promise<NoiseAnswer>;
  /** Hours lost to lifting by a forecast, and when concrete has cured. */
  lifting(
    document: PlanDocument,
    request: LiftingRequest,
    signal?: AbortSignal,
  ): Promise<LiftingAnswer>;
  /** Ends it. Calls that wait, and later ones, reject. */
  dispose(): void;
}

export type { ClaimedFit, PlanFault } from '../verify/index.js';
export type {
  Actual,
  CutOff,
  HandbackResult,
  LiveForecast,
  PlanEvent,
  UnitOutlook,
} from '../risk/index.js';
export type {
  CostCurve,
  CostStep,
  ExpectedCost,
  KeyDateLine,
  PriceResult,
  PriceRow,
} from '../price/index.js';
export type { BookingRules, Milestone } from '../rules/booking/index.js';
export type { Broken, GivenPlan } from '../planner/given/types.js';
export type { WindowMove } from '../planner/given/moves.js';
export type { Ledger, LedgerRow } from '../rules/types.js';
export type { FitVerdict, Placement, Reason } from '../planner/fit/types.js';
export type {
  Allocation,
  Certificate,
  KeyDateForecast,
  Objective,
} from '../planner/search/types.js';
export type { KeyDateGain, Move, Replan, ShortNotice } from '../planner/search/index.js';
export type { ShiftEntry, ShiftEvent, ShiftLog } from '../risk/index.js';
export type * from './options/types.js';
export type {
  FitsChange,
  GainedFit,
  LostFit,
  PackageChange,
  RuleChange,
  UsableChange,
  WorkKind,
} from './rule-change/types.js';
export type * from './site/types.js';
export type { ExportedFile, ExportFormat, ExportOptions, ResultTable } from '../tables/index.js';
export type {
  ColumnPreview,
  DateOrder,
  Effect,
  Encoding,
  ImportChoices,
  ImportedFile,
  ImportPreview,
  ImportReport,
  ImportResult,
  Take,
} from './import/types.js';
export type { AccountRequest } from './account.js';
export type {
  Account,
  AccountRow,
  ChargeActual,
  Claim,
  StandingActual,
  TrainActual,
} from '../price/index.js';
