import { fitAll } from '../fit/index.js';
import { ordinaryNeeds, type PlanDocument } from '../model/index.js';
import { ledgerOf } from '../rules/index.js';
import { planFromDocument } from '../tables/index.js';
import { packagesOf } from './packages.js';
import type { Results } from './types.js';

/** Everything that follows from a document without a search. Faulty rows are left out of the plan and told of. */
export function recompute(document: PlanDocument): Results {
  const { plan, faults } = planFromDocument(document);
  return {
    plan,
    faults,
    ledgers: plan.windows.map((window) => ledgerOf(window, ordinaryNeeds, plan.rules)),
    packages: packagesOf(plan.activities),
    fits: fitAll(plan),
  };
}
