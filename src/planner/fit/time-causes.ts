import type { AccessWindow } from '../../model/index.js';
import { fewestCauses, type Causes } from './causes.js';
import type { Problem } from '../problem/problem.js';
import type { Trials } from './trials.js';

/** Work that finds no place in a window, with what is needed to say why. */
export interface TimeCase {
  /** Of the work with something left. */
  readonly trials: Trials;
  readonly window: AccessWindow;
  /** The problem that was found to have no answer. */
  readonly problem: Problem;
  /** Nothing but time stands in the way, so that leaving units out is worth saying. */
  readonly plain: boolean;
  /** That it has no answer is certain. */
  readonly proven: boolean;
}

/** What may stand in the way of work in a window that takes it: the window's end, a resource, or dates. */
export type TimeCause = 'end' | 'alone' | 'key-date' | 'not-before' | `resource ${string}`;

/** The causes of time and resources that bear on a problem. */
export function timeCauses(problem: Problem): TimeCause[] {
  const isUsed = (supply: number): boolean =>
    problem.tasks.some(({ demands }) => demands.some((need) => need.supply === supply));
  return [
    'end',
    ...problem.supplies.flatMap(({ id, sole }, supply): TimeCause[] =>
      !sole && isUsed(supply) ? [`resource ${id}`] : [],
    ),
    ...(problem.supplies.some(({ sole }) => sole) ? (['alone'] as const) : []),
    ...(problem.tasks.some(({ activity }) => activity.keyDate !== undefined)
      ? (['key-date'] as const)
      : []),
    ...(problem.tasks.some(({ activity }) => activity.notBefore !== undefined)
      ? (['not-before'] as const)
      : []),
  ];
}

/** The fewest of them that are enough for the work not to fit. A window whose end is no cause lasts days longer. */
export function fewestTimeCauses({ trials, window, problem }: TimeCase): Causes<TimeCause> {
  const all = timeCauses(problem);
  const longer = trials.reach;
  return fewestCauses(all, (some) => {
    const without = all.flatMap((cause) =>
      cause === 'end' || some.includes(cause) ? [] : [cause],
    );
    const longerBy = some.includes('end') ? 0 : longer;
    const { done, proven } = trials.solve({ window, longerBy, without });
    return { fits: done, proven };
  });
}
