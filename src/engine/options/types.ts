import type { Phrase, PlanFault } from '../../model/index.js';
import type { Instant } from '../../calendar/index.js';
import type { Edit } from '../../edits/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { OptionVerdict, PriceInput } from '../../price/index.js';
import type { Chance, HandbackOptions, WindowVerdict } from '../../risk/index.js';
import type { Allocation, KeyDateForecast, Unplaced } from '../../planner/search/types.js';

/** What a person wants done otherwise in the window; what is absent stays as planned. */
export interface OptionWish {
  /** Minutes by which the window ends later. */
  readonly longerMinutes?: number;
  /** So many more of a resource on the days of the window. */
  readonly extra?: { readonly resource: string; readonly count: number };
  /** Work that goes to the windows that follow: so many units of it, 1 for a whole piece. */
  readonly leaveOut?: readonly { readonly activity: string; readonly units: number }[];
  /** No unit of the repeated work begins after this moment. Not together with `leaveOut`. */
  readonly cutOffAt?: Instant;
}

/** A way that a person made up: an edit of the document, or a wish that the engine makes one of. */
export type OwnOption = { readonly name: string } & (
  | { readonly edit: Edit }
  | { readonly wish: OptionWish }
);

/** What options of one window are asked about. */
export interface OptionsRequest extends Pick<
  HandbackOptions,
  'seed' | 'runs' | 'events' | 'commonFactor' | 'distribution'
> {
  readonly window: string;
  /** The plan of the work as it stands. */
  readonly allocation: Allocation;
  /** The repeated work to stop between units of; absent: the last in the window that nothing there waits for. */
  readonly activity?: string;
  /** Minutes by which the longer window is longer. Default 60. */
  readonly longerMinutes?: number;
  /** Days after the window at which its second half is booked. Default 7. */
  readonly splitDaysLater?: number;
  /** No unit begins after this moment; absent: the cheapest is found. */
  readonly cutOffAt?: Instant;
  /** When more time would be asked for, for the factor of notice; absent: none is applied. */
  readonly askedAt?: Instant;
  /** Times the usual work of a search that the scheduler may put into one option. Default 0.5. */
  readonly effortPerOption?: number;
  readonly own?: readonly OwnOption[];
}

/** What an option does otherwise. */
export type OptionKind =
  | 'as-planned'
  | 'another-order'
  | 'one-unit-less'
  | 'extra-resource'
  | 'earlier-cut-off'
  | 'longer-window'
  | 'split'
  | 'own';

/** One part of what an option costs. Parts add up to the total. */
export interface OptionPart {
  readonly part: 'overrun' | 'plant' | 'booking' | 're-booking' | 'key-dates';
  readonly what: Phrase;
  /** Decimal text. An expected overrun is the mean of the runs. */
  readonly amount: string;
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
  readonly source: Phrase;
}

/** Work that goes to another window than planned. */
export interface MovedWork {
  readonly activity: string;
  readonly title: string;
  /** Units, or 1 for a whole piece of work. */
  readonly units: number;
  /** Null: outside. */
  readonly window: string | null;
  readonly from: Instant;
}

/** A key date that an option serves otherwise than planned. */
export interface KeyDateChange {
  readonly package: string;
  readonly due: Instant;
  readonly before: KeyDateForecast;
  readonly after: KeyDateForecast;
}

/** What an option's handback looks like. With two windows: one each. */
export interface OptionHandback {
  readonly window: string;
  readonly bookedEnd: Instant;
  readonly plannedHandback: Instant;
  readonly marginMinutes: number;
  readonly requiredMinutes: number;
  readonly verdict: WindowVerdict;
  readonly onTime: Chance;
  readonly p50: Instant;
  readonly p80: Instant;
  readonly p95: Instant;
}

interface OptionName {
  /** Unique in the answer. */
  readonly id: string;
  readonly kind: OptionKind;
  readonly name: Phrase;
}

/** An option scheduled, simulated and priced. Money is decimal text. */
export interface PricedOption extends OptionName {
  readonly state: 'priced';
  /** What changes. */
  readonly changes: readonly Phrase[];
  /** What it changes in the document; null: nothing. */
  readonly edit: Edit | null;
  /** Its plan of the work, to be taken with the edit. */
  readonly placements: readonly Placement[];
  /** Its placements in the windows asked about. */
  readonly here: readonly Placement[];
  readonly moved: readonly MovedWork[];
  /** Work that had a place as planned and finds none. */
  readonly unplaced: readonly Unplaced[];
  readonly keyDates: readonly KeyDateChange[];
  readonly handbacks: readonly OptionHandback[];
  readonly parts: readonly OptionPart[];
  /** What the independent check found of its plan of the work; empty: nothing. */
  readonly faults: readonly PlanFault[];
  readonly expectedTotal: string;
  readonly standardError: string;
  /** Decimal text: the least total that at least 50 % of the runs do not exceed; `p80Total` and `p95Total` likewise. */
  readonly p50Total: string;
  readonly p80Total: string;
  readonly p95Total: string;
  /** Expected total less that of as planned; negative: cheaper. */
  readonly difference: string;
  /** Of the difference, run by run with the same draws. */
  readonly differenceError: string;
  readonly verdict: OptionVerdict;
  readonly cheaperInShare: number;
  /** At what price it turns from cheaper to dearer; null for as planned. */
  readonly breakEven: {
    readonly what: Phrase;
    readonly amount: string;
    readonly text: Phrase;
  } | null;
  readonly notes: readonly Phrase[];
}

/** An option that cannot be had, has nothing to vary, or was not worked out: said, never hidden. */
export interface RefusedOption extends OptionName {
  readonly state: 'infeasible' | 'nothing-to-vary';
  readonly reason: Phrase;
}

/** What became of one option. */
export type OptionOutcome = PricedOption | RefusedOption;

/** Stopping after so many units. Money is decimal text. */
export interface StopRow {
  readonly units: number;
  /** When the last of them is planned to be done. */
  readonly stopAt: Instant;
  readonly onTime: Chance;
  readonly expectedOverrunCost: string;
  /** Booking the rest again: prices of the book, plant and labour of further visits, what it does to their overruns. */
  readonly reBooking: string;
  readonly reBookingFormula: Phrase;
  readonly expectedTotal: string;
  readonly standardError: string;
  /** What one more unit than the row before costs; negative: saves. Null for the first. */
  readonly oneMore: string | null;
  readonly oneMoreError: string | null;
  readonly tiedWithBest: boolean;
  /** Where the rest goes. */
  readonly moved: readonly MovedWork[];
  /** Units for which no window is left; their cost is not in the total. */
  readonly unplacedUnits: number;
  /** The scheduler's time ran out: the cost of the rest is in proportion to the row above it. */
  readonly inProportion: boolean;
}

/** Every count of units that one night may stop at, held against each other. */
export interface StopOutlook {
  readonly activity: string;
  readonly title: string;
  readonly unitsPlanned: number;
  readonly rows: readonly StopRow[];
  readonly bestUnits: number;
  readonly bestStopAt: Instant;
}

/** Where two options change places. `cheaper` and `dearer` are ids; money is decimal text. */
export interface BreakEven {
  readonly cheaper: string;
  readonly dearer: string;
  /** Expected total of the dearer less that of the cheaper. */
  readonly dearerBy: string;
  /** The difference is within two of its standard errors. */
  readonly tooCloseToCall: boolean;
  /** Both cost the same where every overrun costs this many times what the price book says; null: nowhere. */
  readonly overrunTimes: number | null;
  /** The chance of a late handback of the cheaper, and what it would be where both cost the same; null: there is none. */
  readonly lateChance: { readonly now: number; readonly at: number } | null;
  /** What either of them adds at a price of its own, and the price below which it is the cheaper of the two. */
  readonly ownPrices: readonly {
    readonly option: string;
    readonly what: Phrase;
    readonly amount: string;
  }[];
  /** The least overrun of the window as planned that costs as much as what the dearer pays beforehand; null: none found. */
  readonly overrunMinutes: number | null;
  readonly text: Phrase;
}

/** Ways to do the work of one window side by side. */
export interface OptionsAnswer {
  readonly window: string;
  readonly currency: string;
  readonly runs: number;
  readonly seed: number;
  /** Repeated work of the window that could stop between units; `waits`: what in the window must wait for all of it. */
  readonly repeated: readonly {
    readonly activity: string;
    readonly title: string;
    readonly units: number;
    readonly waits: readonly string[];
  }[];
  /** As planned first. */
  readonly options: readonly OptionOutcome[];
  /** Id of the option with the least expected total; the earlier listed of equals. */
  readonly cheapest: string;
  /** Options that cannot be told from the cheapest. */
  readonly tied: readonly string[];
  /** The cheapest against every other option, and as planned against every other. */
  readonly breakEvens: readonly BreakEven[];
  readonly stop: StopOutlook | null;
  /** Why there is no `stop`; empty when there is. */
  readonly noStop: Phrase;
  readonly notes: readonly Phrase[];
  /** What the totals leave out. */
  readonly notPriced: readonly Phrase[];
  readonly cautions: readonly string[];
}
