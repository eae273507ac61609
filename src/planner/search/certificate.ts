import { durationText } from '../../calendar/index.js';
import type { Score } from '../fit/index.js';
import { valuesOf, type Goal } from './objectives.js';
import type { Certificate, Objective, ObjectiveValue } from './types.js';

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
  nothing?: string,
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
    text: nothing ?? certificateText({ mostPlaced, objectives }),
  };
}

/** How good a plan is known to be, in words without a capital. */
export function certificateText({
  mostPlaced,
  objectives,
}: Pick<Certificate, 'mostPlaced' | 'objectives'>): string {
  return mostPlaced ? textOf(objectives) : 'best found, not shown that no more can be placed';
}

/** `proven best`, or the first value that is not, with how far from best it can be. */
function textOf(objectives: readonly ObjectiveValue[]): string {
  const open = objectives.find((each) => !each.proven);
  if (!open) return 'proven best';
  const far = `best found, at most ${amountText(open.name, open.value - open.lowerBound)} from best`;
  return open === objectives[0]
    ? far
    : `${words[objectives[0]!.name]} proven best; ${words[open.name]} ${far}`;
}

const words = {
  'key-dates': 'key dates',
  margins: 'margins',
  finish: 'finish',
  'fewest-windows': 'count of windows',
} as const;

function amountText(name: Objective, amount: number): string {
  if (name === 'fewest-windows') return amount === 1 ? '1 window' : `${amount} windows`;
  return durationText(amount);
}
