import type { HandbackResult } from '../../src/engine/types.js';

/** What the end that counts is called: the booked one, or the earlier one that the shift has agreed to. */
export const endWord = ({ bookedBefore }: HandbackResult): string =>
  bookedBefore === null ? 'booked end' : 'agreed end';

/** The same at the head of a row. */
export const endLabel = (result: HandbackResult): string =>
  result.bookedBefore === null ? 'Booked end' : 'Agreed end';
