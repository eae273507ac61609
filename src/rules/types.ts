import type { Interval, IntervalSet } from '../calendar/index.js';
import type { Needs, Reasoned, Worded } from '../model/index.js';

export type LedgerKind = 'lead-in' | 'usable' | 'curfew' | 'shift-break' | 'lead-out' | 'margin';

/** One stretch of a window that belongs to exactly one rule, and why that applies here. */
export interface LedgerRow extends Interval, Reasoned {
  /** Name of the rule or step in the rule set; `Usable` for usable time. */
  readonly rule: string;
  /** The name as a sentence, when it is not from the rule set. */
  readonly named?: Worded['sentence'];
  readonly kind: LedgerKind;
  readonly minutes: number;
}

/** A window's minutes, each in exactly one row, in time order. The rows sum to the gross to the minute. */
export interface Ledger {
  readonly window: string;
  readonly needs: Needs;
  readonly grossMinutes: number;
  readonly usableMinutes: number;
  readonly rows: readonly LedgerRow[];
  /** The usable time. */
  readonly usable: IntervalSet;
  /** Minutes by which the window is too short for its own deductions; 0 when they fit. */
  readonly shortfallMinutes: number;
  /** Why the window takes no such work at all (withdrawn, isolation not booked); empty when it takes it. */
  readonly barred: readonly (Worded & { readonly code: string })[];
}
