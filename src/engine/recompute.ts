import { fitAll } from '../fit/index.js';
import { ordinaryNeeds, type PlanDocument } from '../model/index.js';
import { ledgerOf } from '../rules/index.js';
import { planFromDocument } from '../tables/index.js';
import { doubted, rowsLeftOut } from './left-out.js';
import { packagesOf } from './packages.js';
import type { Results } from './types.js';

/** What follows at once: plan, faults, ledgers and packages. */
export function outline(document: PlanDocument): Results {
  const { plan, faults } = planFromDocument(document);
  return {
    plan,
    faults,
    ledgers: plan.windows.map((window) => ledgerOf(window, ordinaryNeeds, plan.rules)),
    packages: packagesOf(plan.activities, rowsLeftOut(document, faults)),
    fits: [],
  };
}

/**
 * Everything that follows from a document without a search. Faulty rows are left out of the plan and told of; a package
 * with such rows fits nowhere until they are mended.
 */
export function recompute(document: PlanDocument): Results {
  const first = outline(document);
  const leftOut = new Map(first.packages.map((one) => [one.id, one.rowsLeftOut]));
  return {
    ...first,
    fits: fitAll(first.plan).map((verdict) => {
      const rows = leftOut.get(verdict.package) ?? 0;
      return rows > 0 ? doubted(verdict, rows) : verdict;
    }),
  };
}
