import type { Instant, Interval } from '../../calendar/index.js';
import type { Phrase } from '../../model/index.js';
import type { CostInputs } from '../cost-model.js';
import type { HeadOfCost, OnSiteRow, PriceInput, PriceResult } from '../types.js';

/** Who claims a cost, and the evidence. */
export interface Claim {
  readonly claimedBy: string;
  /** Evidence: a signal log, a time sheet number. Absent or empty: none. */
  readonly evidence?: string;
  /** Our share, as decimal text from 0 to 1. Absent: all of it. */
  readonly share?: string;
}

/** What a train really did. */
export interface TrainActual extends Claim {
  readonly train: string;
  /** When it passed; null: it was cancelled. */
  readonly passedAt: Instant | null;
}

/** Time that plant or labour was actually kept after the booked end. */
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

/** Records of a late handback, with the inputs that price an overrun. */
export interface AccountInputs extends CostInputs {
  readonly actualHandback: Instant;
  readonly trainActuals?: readonly TrainActual[];
  readonly standingActuals?: readonly StandingActual[];
  readonly chargeActuals?: readonly ChargeActual[];
  /** Claims on calculated rows (a queued train, fixed charges, damages …), by row code. */
  readonly claims?: Readonly<Record<string, Claim>>;
  /** The forecast before the event, for comparison. */
  readonly forecast?: PriceResult;
}

/** One cost of the account. */
export interface AccountRow {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly what: Phrase;
  /** Decimal text, rounded once. */
  readonly amount: string;
  readonly counted: boolean;
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
  readonly source: Phrase;
  /** `recorded`: from recorded times or amounts. `worked out`: from the handback by the price book. */
  readonly basis: 'recorded' | 'worked out';
  /** Empty: nobody has claimed it. */
  readonly claimedBy: string;
  /** Our share of the cost, from 0 to 1; already applied in `amount`. */
  readonly share: string;
  readonly evidence: string;
  readonly evidenced: boolean;
}

/** A train that was late or cancelled. */
export interface AccountTrain {
  readonly train: string;
  readonly dueAt: Instant;
  /** When it passed, recorded or calculated; null: cancelled. */
  readonly passedAt: Instant | null;
  /** Null: recorded as cancelled. */
  readonly minutesLate: number | null;
  readonly weight: number;
  /** Minutes charged, before weighting. */
  readonly countedMinutes: number;
  readonly cancelled: boolean;
  readonly basis: AccountRow['basis'];
  /** Decimal text: our share of its cost. */
  readonly amount: string;
}

/** Cost of a handback, row by row. */
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
  /** Counted amounts by claimant, sorted by name; they add up to the total. */
  readonly claimants: readonly { readonly claimedBy: string; readonly amount: string }[];
  /** Counted amounts by head, with the forecast when given. */
  readonly heads: readonly {
    readonly head: HeadOfCost;
    readonly amount: string;
    readonly forecast: string | null;
  }[];
  /** Late and cancelled trains by due time; empty when delay is not priced by train. */
  readonly trains: readonly AccountTrain[];
  /** Plant and people of the window as planned. */
  readonly onSite: readonly OnSiteRow[];
  /** What the total leaves out, in words. */
  readonly notPriced: readonly Phrase[];
  readonly notes: readonly Phrase[];
  readonly cautions: readonly string[];
}
