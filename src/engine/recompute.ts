import type { PlanDocument } from '../model/index.js';
import { Session } from './incremental/session.js';
import type { Results } from './types.js';

/**
 * Everything that follows from a document without a search. Faulty rows are left out of the plan and told of; a package
 * with such rows fits nowhere until they are mended.
 *
 * @param onOutline Hears of plan, faults, ledgers and packages, with no `fits`, before the verdicts are worked out.
 */
export function recompute(document: PlanDocument, onOutline?: (outline: Results) => void): Results {
  return new Session().recompute(document, onOutline);
}
