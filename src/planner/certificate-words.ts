import { saysBy, type Note, type Worded } from '../model/index.js';
import type { Unstated } from './unstated.js';

const pairs = (count: number): string => (count === 1 ? 'one pair' : `${count} pairs`);

/** What pages say of a plan that a search has brought them. */
export const certificateSentences = {
  'search-alone': ({
    between,
    beside,
    stops,
    known,
  }: {
    /** Pairs of pieces between which nobody said whether the line is fit to run. */
    readonly between: number;
    /** Pairs of which nobody said whether they may share a place. */
    readonly beside: number;
    /** Nor is it said where work stops. */
    readonly stops: boolean;
    readonly known: Worded;
  }) => {
    const unsaid = [
      ...(between > 0 ? [`whether the line is fit to run between ${pairs(between)} of work`] : []),
      ...(beside > 0 ? [`whether ${pairs(beside)} of work may share a place`] : []),
      ...(stops ? ['whether the line is fit to run where work stops'] : []),
    ];
    return `of the search alone, as nobody said ${unsaid.join(', or ')}: ${known.text}`;
  },
};
const say = saysBy(certificateSentences);

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
  return leavesUnsaid(plan) ? say('search-alone', { ...unsaidOf(plan), known }) : known;
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
