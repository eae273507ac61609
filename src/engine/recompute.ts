import { fitAll } from '../fit/index.js';
import { ordinaryNeeds, type PlanDocument } from '../model/index.js';
import { ledgerOf } from '../rules/index.js';
import { sitePlan } from './site-plan.js';
import { doubted, rowsLeftOut } from './left-out.js';
import { packagesOf } from './packages.js';
import type { Results } from './types.js';

/**
 * Everything that follows from a document without a search. Faulty rows are left out of the plan and told of; a package
 * with such rows fits nowhere until they are mended.
 *
 * @param onOutline Hears of plan, faults, ledgers and packages, with no `fits`, before the verdicts are worked out.
 */
export function recompute(document: PlanDocument, onOutline?: (outline: Results) => void): Results {
  const { plan, faults } = sitePlan(document);
  const leftOut = rowsLeftOut(document, faults);
  const outline: Results = {
    plan,
    faults,
    ledgers: plan.windows.map((window) => ledgerOf(window, ordinaryNeeds, plan.rules)),
    packages: packagesOf(plan.activities, leftOut),
    fits: [],
  };
  onOutline?.(outline);
  return {
    ...outline,
    fits: fitAll(plan).map((verdict) => {
      const rows = leftOut.get(verdict.package) ?? 0;
      return rows > 0 ? doubted(verdict, rows) : verdict;
    }),
  };
}
