import type { Instant } from '../calendar/index.js';
import type { Phrase } from '../model/index.js';
import type { HeadOfCost } from '../model/price-book.js';
import type { Rounding } from './money.js';
import type { Stay } from './on-site.js';

export type { HeadOfCost } from '../model/price-book.js';
export type { Rounding } from './money.js';

/** A number used in calculating an amount. */
export interface PriceInput {
  readonly name: Phrase;
  readonly value: Phrase;
  /** Empty for a plain number. */
  readonly unit: Phrase;
}

/** One head of cost at one overrun. */
export interface PriceRow {
  readonly head: HeadOfCost;
  /** Distinguishes rows of the same head; stable within a book. */
  readonly code: string;
  /** As the price book has it, or a sentence. */
  readonly title: Phrase;
  /** Decimal text in the book's currency, rounded once: `1843.50`. */
  readonly amount: string;
  /** False: shown but not in the total, as the alternative to what is counted. */
  readonly counted: boolean;
  /** How the amount was calculated, in words with numbers. */
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
  readonly source: Phrase;
}

/** A train due after the booked end, as a late handback affects it. */
export interface HeldTrain {
  readonly train: string;
  readonly dueAt: Instant;
  /** When it passes; for a cancelled one, when it would have. */
  readonly leavesAt: Instant;
  readonly minutesLate: number;
  readonly weight: number;
  readonly cancelled: boolean;
  /** Minutes charged, before weighting. */
  readonly countedMinutes: number;
}

/** A stay of plant or people with its cost as planned, which no overrun changes. */
export interface OnSiteRow extends Omit<Stay, 'resource'> {
  readonly resource: string;
  /** Minutes from call to departure as planned. */
  readonly plannedMinutes: number;
  /** Decimal text: cost of the planned stay, minimum hours included. */
  readonly owed: string;
  readonly owedFormula: Phrase;
}

/** Cost of an overrun. */
export interface PriceResult {
  readonly window: string;
  readonly overrunMinutes: number;
  readonly handbackAt: Instant;
  readonly currency: string;
  readonly rounding: Rounding;
  readonly basis: 'actual-loss' | 'damages';
  readonly rows: readonly PriceRow[];
  /** Sum of the counted rows. */
  readonly total: string;
  /** Sum of the rows that are not counted. */
  readonly notCounted: string;
  /** Late and cancelled trains by due time; empty when delay is not priced by train. */
  readonly trains: readonly HeldTrain[];
  /** Plant and people on site, each with its cost as planned. */
  readonly onSite: readonly OnSiteRow[];
  /** What was assumed, in words. */
  readonly notes: readonly Phrase[];
  /** What the total leaves out, in words. */
  readonly notPriced: readonly Phrase[];
  readonly cautions: readonly string[];
}

export type CostStepKind =
  | 'threshold'
  | 'train-held'
  | 'train-cancelled'
  | 'rate-change'
  | 'least-hours'
  | 'cap';

/** A minute at which the cost jumps or changes slope, and why. */
export interface CostStep {
  /** The first overrun, in minutes, that it affects. */
  readonly atMinute: number;
  readonly kind: CostStepKind;
  readonly head: HeadOfCost;
  readonly code: string;
  /** As the price book has it, or a sentence. */
  readonly name: Phrase;
  /** Whether its head is part of the total. */
  readonly counted: boolean;
}

export interface HeadCurve {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly title: Phrase;
  readonly counted: boolean;
  readonly source: Phrase;
  /** Minor units (pence) at each minute. */
  readonly minor: readonly number[];
}

/** The cost at every whole minute of overrun from 0 to `maxMinutes`. */
export interface CostCurve {
  readonly window: string;
  readonly currency: string;
  readonly decimals: number;
  readonly rounding: Rounding;
  readonly maxMinutes: number;
  /** Total in minor units (pence) at each minute, exact: `minor[m]` is the cost of an overrun of m minutes. */
  readonly minor: readonly number[];
  /** The same as decimal text. */
  readonly amounts: readonly string[];
  readonly heads: readonly HeadCurve[];
  /** In order of minute. */
  readonly steps: readonly (CostStep & {
    /** Rise of the total from the minute before. */
    readonly rise: string;
  })[];
  /** Minutes at which the total falls: none unless cancelled trains free their path. */
  readonly falls: readonly { readonly atMinute: number; readonly by: string }[];
  readonly notes: readonly Phrase[];
  /** What the totals leave out, in words, for overruns up to the end of the curve. */
  readonly notPriced: readonly Phrase[];
  readonly cautions: readonly string[];
}
