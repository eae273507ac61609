import type { Results } from '../../src/engine/types.js';
import type { PlanDocument } from '../../src/model/index.js';
import { tableKinds } from '../../src/model/index.js';
import type { LedgerAskEvent } from '../ledger/ledger-ask-event.js';
import { countText } from '../shared/format.js';
import { explainFit, explainPackage, fitsIn } from '../why/explain-fit.js';
import { explainLedger } from '../why/explain-ledger.js';
import { explainFaults } from '../why/explain-plan.js';
import type { Explanation } from '../why/explanation.js';

// What the panel says for each thing that can be picked; null where the results do not hold it.

/** A figure of a window's ledger. The ledger stands above it, so the sum says what the time is good for. */
export function tellLedger(
  results: Results | null,
  id: string,
  row: LedgerAskEvent['row'],
): Explanation | null {
  const window = results?.plan.windows.find((one) => one.id === id);
  const ledger = results?.ledgers.find((one) => one.window === id);
  if (!results || !window || !ledger) return null;
  const told = explainLedger(ledger, window, results.plan.rules, row);
  if (row !== 'usable') return told;
  const rows = fitsIn(id, results.fits);
  const count = `${rows.length} of ${countText(results.packages.length, 'package')}`;
  return {
    ...told,
    sentence: `${told.sentence} Whole and on its own, ${count} would fit.`,
    rowsTitle: 'What would fit, each on its own',
    rows,
  };
}

/** A package against a window. */
export function tellFit(
  results: Results | null,
  at: { readonly package: string; readonly window: string },
): Explanation | null {
  const verdict = results?.fits.find(
    (one) => one.package === at.package && one.window === at.window,
  );
  const pack = results?.packages.find((one) => one.id === at.package);
  const window = results?.plan.windows.find((one) => one.id === at.window);
  if (!results || !verdict || !pack || !window) return null;
  return explainFit(verdict, pack, window, results.plan.activities);
}

/** A package against all windows. */
export function tellPackage(results: Results | null, id: string): Explanation | null {
  const pack = results?.packages.find((one) => one.id === id);
  if (!results || !pack) return null;
  return explainPackage(pack, results.fits, results.plan.windows, results.plan.activities);
}

/** Everything that could not be used as typed. */
export function tellFaults(results: Results | null, document: PlanDocument | null): Explanation {
  return explainFaults(results?.faults ?? [], (file) =>
    tableKinds.find((kind) => document?.tables[kind].file === file),
  );
}
