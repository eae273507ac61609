import type { Note, Worded } from '../model/index.js';
import { sayOfPlan } from './plan-sentences.js';
import type { Unstated } from './unstated.js';

/** What the words need of a plan. */
export interface Certified {
  readonly certificate: Worded;
  readonly unstated: readonly Unstated[];
  readonly notes?: readonly Note[];
}

/**
 * How good a plan is known to be, in words without a capital. A certificate speaks of the search alone: where nobody said
 * what the line is like between pieces of work, that comes first, and no word of proof stands bare.
 */
export function certificateSaid(plan: Certified): Worded {
  const { text, sentence } = plan.certificate;
  const known = { text, ...(sentence && { sentence }) };
  return leavesUnsaid(plan) ? sayOfPlan('search-alone', { ...unsaidOf(plan), known }) : known;
}

/** The same in English. */
export const certificateWords = (plan: Certified): string => certificateSaid(plan).text;

/** Whether something that decides if the line is fit to run, or a place shared, is not said. */
export function leavesUnsaid(plan: Certified): boolean {
  const { between, beside, stops } = unsaidOf(plan);
  return between + beside > 0 || stops;
}

function unsaidOf({ unstated, notes = [] }: Certified): {
  readonly between: number;
  readonly beside: number;
  readonly stops: boolean;
} {
  const between = unstated.filter((item) => item.kind === 'between-windows').length;
  const stops = notes.some((note) => note.code === 'left-open');
  return { between, beside: unstated.length - between, stops };
}
