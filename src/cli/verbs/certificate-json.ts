import { english } from '../../engine/english/say.js';
import { certificateWords } from '../../planner/certificate-words.js';
import type { Allocation } from '../../planner/search/types.js';

/** How good a plan is known to be, and what the check found of it, as JSON has it. */
export function certificateJson(allocation: Allocation) {
  const { certificate } = allocation;
  return {
    ...certificate,
    text: certificateWords(allocation),
    faults: certificate.faults?.map((fault) => ({ ...fault, text: english(fault.text) })),
  };
}
