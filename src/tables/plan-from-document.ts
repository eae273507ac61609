import type { PlanDocument } from '../model/index.js';
import { otherReaders } from './other-readers.js';
import { planWith } from './plan.js';
import type { PlanCache } from './plan-cache.js';
import type { PlanResult } from './plan-sources.js';

/** As `planWith`, whatever tables the document has. */
export function planFromDocument(document: PlanDocument, memory?: PlanCache): PlanResult {
  return planWith(otherReaders, document, memory);
}
