import type { Ledger, LedgerRow } from '../../src/rules/types.js';

/** One bar of the picture: what is taken away, standing on what is left after it. */
export interface LedgerStep {
  /** Index in the ledger's rows. */
  readonly index: number;
  readonly row: LedgerRow;
  /** Minutes left after this is taken away: the bar runs from here for the row's minutes. */
  readonly left: number;
}

/** The deductions in time order, each standing on what it leaves; the last leaves the usable minutes. */
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
