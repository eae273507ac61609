import { leavesUnsaid } from '../../src/engine/index.js';
import type { Allocation } from '../../src/planner/search/types.js';
import type { ProvedCode } from './explain-strings.js';

/** How much of a plan's worth is proved. */
export function provedCode(allocation: Allocation): ProvedCode {
  const { certificate } = allocation;
  if (!certificate.verified) return 'failed';
  // It speaks of the search alone where nobody said what the line is like between pieces of work.
  if (leavesUnsaid(allocation)) return 'unstated';
  if (certificate.objectives.every((objective) => objective.proven) && certificate.proven)
    return 'best';
  return certificate.proven ? 'first' : 'found';
}
