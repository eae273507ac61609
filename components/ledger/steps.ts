import type { Ledger, LedgerRow } from '../../src/rules/types.js';

/** A bar of the picture: a deduction, drawn from the minutes left after it. */
export interface LedgerStep {
  /** Index in the ledger's rows. */
  readonly index: number;
  readonly row: LedgerRow;
  /** Minutes left after this deduction: the bar starts here and is as long as the row's minutes. */
  readonly left: number;
}

/** The deductions in time order with the minutes left after each; the last leaves the usable minutes. */
export function stepsOf(ledger: Ledger): LedgerStep[] {
  let left = ledger.grossMinutes;
  const steps: LedgerStep[] = [];
  for (const [index, row] of ledger.rows.entries()) {
    if (row.kind === 'usable') continue;
    left -= row.minutes;
    steps.push({ index, row, left });
  }
  return steps;
}
