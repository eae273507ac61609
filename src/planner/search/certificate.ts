import type { Worded } from '../../model/index.js';
import type { Score } from '../fit/index.js';
import { sayOfPlan } from '../plan-sentences.js';
import { valuesOf, type Goal } from './objectives.js';
import type { Certificate, ObjectiveValue } from './types.js';

export interface Known {
  readonly score: Score;
  /** Values that no schedule beats. */
  readonly bound: Score;
  /** How many leading values are proven best by having looked at everything. */
  readonly proven: number;
}

/**
 * What can be said of an answer: proven best, or how far from best at most.
 *
 * @param nothing Why there is nothing to prove, in words; absent: there is.
 */
export function certificateOf(
  goal: Goal,
  known: Known,
  { cutShort, holds }: Pick<Certificate, 'cutShort' | 'holds'>,
  nothing?: Worded,
): Certificate {
  const values = valuesOf(known.score, goal);
  const bounds = valuesOf(known.bound, goal);
  const named = goal.objectives.filter((each) => each !== 'margins');
  // Where more might be placed, with other values, no bound speaks of the best.
  const mostPlaced =
    known.proven > 1 || (known.score[0] === known.bound[0] && known.score[1] === known.bound[1]);
  const objectives = goal.objectives.map((name): ObjectiveValue => {
    const searched = name === 'margins' || 2 + named.indexOf(name) < known.proven;
    const bound = mostPlaced ? Math.min(values[name], bounds[name]) : 0;
    const lowerBound = searched ? values[name] : bound;
    return {
      name,
      value: values[name],
      lowerBound,
      proven: nothing === undefined && (searched || (mostPlaced && lowerBound === values[name])),
    };
  });
  const first = objectives[0]!;
  return {
    proven: first.proven,
    lowerBound: first.lowerBound,
    objective: first.value,
    mostPlaced,
    cutShort,
    holds,
    verified: false,
    objectives,
    ...(nothing ?? qualityOf({ mostPlaced, objectives })),
  };
}

/** How good a plan is known to be, in words without a capital: the first value that is not proven says how far it can be. */
export function qualityOf({
  mostPlaced,
  objectives,
}: Pick<Certificate, 'mostPlaced' | 'objectives'>): Required<Worded> {
  if (!mostPlaced) return sayOfPlan('more-might-go', {});
  const open = objectives.find((each) => !each.proven);
  if (!open) return sayOfPlan('proven-best', {});
  const far = { aim: open.name, far: open.value - open.lowerBound };
  const [first] = objectives;
  return open === first
    ? sayOfPlan('found-from-best', far)
    : sayOfPlan('first-proven', { ...far, first: first!.name });
}
