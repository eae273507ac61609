import type { Note } from '../model/index.js';
import type { Unstated } from './unstated.js';

/** What the words need of a plan. */
export interface Certified {
  readonly certificate: { readonly text: string };
  readonly unstated: readonly Unstated[];
  readonly notes?: readonly Note[];
}

/**
 * How good a plan is known to be, in words without a capital. A certificate speaks of the search alone: where nobody said
 * what the line is like between pieces of work, that comes first, and no word of proof stands bare.
 */
export function certificateWords(plan: Certified): string {
  const { certificate } = plan;
  const unsaid = unsaidOf(plan);
  return unsaid.length === 0
    ? certificate.text
    : `of the search alone, as nobody said ${unsaid.join(', or ')}: ${certificate.text}`;
}

/** Whether something that decides if the line is fit to run, or a place shared, is not said. */
export const leavesUnsaid = (plan: Certified): boolean => unsaidOf(plan).length > 0;

function unsaidOf({ unstated, notes = [] }: Certified): readonly string[] {
  const between = unstated.filter((item) => item.kind === 'between-windows').length;
  const beside = unstated.length - between;
  return [
    ...(between > 0 ? [`whether the line is fit to run between ${pairs(between)} of work`] : []),
    ...(beside > 0 ? [`whether ${pairs(beside)} of work may share a place`] : []),
    ...(notes.some((note) => note.code === 'left-open')
      ? ['whether the line is fit to run where work stops']
      : []),
  ];
}

const pairs = (count: number): string => (count === 1 ? 'one pair' : `${count} pairs`);
