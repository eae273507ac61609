import type { HandbackResult } from '../../src/engine/types.js';
import { explainWords } from './explain-words.js';

/** What the end that counts is called: the booked one, or the earlier one that the shift has agreed to. */
export function endWord({ bookedBefore }: HandbackResult): string {
  const { bookedEnd, agreedEnd } = explainWords().handback;
  return bookedBefore === null ? bookedEnd : agreedEnd;
}

/** The same at the head of a row. */
export function endLabel({ bookedBefore }: HandbackResult): string {
  const { bookedEndLabel, agreedEndLabel } = explainWords().handback;
  return bookedBefore === null ? bookedEndLabel : agreedEndLabel;
}
