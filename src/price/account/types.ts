import type { Instant, Interval } from '../../calendar/index.js';
import type { CostInputs } from '../cost-model.js';
import type { HeadOfCost, OnSiteRow, PriceInput, PriceResult } from '../types.js';

/** Who claims a cost and what shows it. */
export interface Claim {
  readonly claimedBy: string;
  /** What shows it: a signal log, a time sheet number. Absent or empty: not evidenced. */
  readonly evidence?: string;
  /** Part of it that is ours, as decimal text from 0 to 1; absent: all. */
  readonly share?: string;
}

/** What a train really did. */
export interface TrainActual extends Claim {
  readonly train: string;
  /** When it passed; null: it was cancelled. */
  readonly passedAt: Instant | null;
}

/** Time for which plant or labour was really kept beyond the booked end. */
export interface StandingActual extends Claim, Interval {
  readonly resource: string;
  /** How many of the resource stood by. */
  readonly amount: number;
}

/** Any other cost, as invoiced. */
export interface ChargeActual extends Claim {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly title: string;
  /** Decimal text. */
  readonly amount: string;
  readonly source?: string;
}

/** What was recorded of a late handback, beside what an overrun is priced from. */
export interface AccountInputs extends CostInputs {
  readonly actualHandback: Instant;
  readonly trainActuals?: readonly TrainActual[];
  readonly standingActuals?: readonly StandingActual[];
  readonly chargeActuals?: readonly ChargeActual[];
  /** For rows worked out and not recorded (a queued train, fixed charges, damages …): by code, who claims them. */
  readonly claims?: Readonly<Record<string, Claim>>;
  /** What was said before the event, to be held against it. */
  readonly forecast?: PriceResult;
}

/** One cost of the account. */
export interface AccountRow {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly what: string;
  /** Decimal text, rounded once. */
  readonly amount: string;
  readonly counted: boolean;
  readonly formula: string;
  readonly inputs: readonly PriceInput[];
  readonly source: string;
  /** `recorded`: from times or sums that were noted; `worked out`: by the price book from the handback alone. */
  readonly basis: 'recorded' | 'worked out';
  /** Empty: nobody has claimed it. */
  readonly claimedBy: string;
  /** The part of the cost that is ours, from 0 to 1: `amount` is that part. */
  readonly share: string;
  readonly evidence: string;
  readonly evidenced: boolean;
}

/** What became of one train that was late or cancelled. */
export interface AccountTrain {
  readonly train: string;
  readonly dueAt: Instant;
  /** When it passed, as recorded or as the queue has it; null: cancelled. */
  readonly passedAt: Instant | null;
  /** Null: recorded as cancelled. */
  readonly minutesLate: number | null;
  readonly weight: number;
  /** Charged minutes, before the weight. */
  readonly countedMinutes: number;
  readonly cancelled: boolean;
  readonly basis: AccountRow['basis'];
  /** Decimal text: our share of what it costs. */
  readonly amount: string;
}

/** What a handback cost, row by row. */
export interface Account {
  readonly window: string;
  readonly currency: string;
  readonly bookedEnd: Instant;
  readonly actualHandback: Instant;
  /** 0 when the line was given back on time or early. */
  readonly overrunMinutes: number;
  readonly rows: readonly AccountRow[];
  readonly total: string;
  readonly evidenced: string;
  readonly notEvidenced: string;
  readonly notCounted: string;
  /** Counted rows by claimant, in order of name; they add up to the total. */
  readonly claimants: readonly { readonly claimedBy: string; readonly amount: string }[];
  /** Counted rows by head, beside the forecast where one was given. */
  readonly heads: readonly {
    readonly head: HeadOfCost;
    readonly amount: string;
    readonly forecast: string | null;
  }[];
  /** Late and cancelled trains, in order due; empty where the book has no price by train. */
  readonly trains: readonly AccountTrain[];
  /** Plant and people of the window as planned. */
  readonly onSite: readonly OnSiteRow[];
  /** What the total leaves out, in words. */
  readonly notPriced: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}
