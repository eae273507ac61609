import type { Activity } from '../../model/index.js';
import type { Task, Tie } from './problem.js';

/** Some work, by index: where it is done, what waits for what, and how long each takes. */
interface Work {
  readonly activities: readonly Pick<Activity, 'place'>[];
  /** In an order in which all that is waited for comes first. */
  readonly order: readonly number[];
  readonly before: readonly (readonly Pick<Tie, 'task' | 'fromStart' | 'gap'>[])[];
  readonly work: readonly Pick<Task, 'units' | 'perUnit' | 'setUp' | 'makeSafe'>[];
}

/** Minutes of the longest chain of work and gaps that begins and ends inside, whatever the calendars. O(tasks + ties). */
export function chainOf({ activities, order, before, work }: Work): number {
  const starts: number[] = [];
  const ends: number[] = [];
  let chain = 0;
  for (const index of order) {
    const isInside = activities[index]!.place === 'inside';
    // Outside work that waits for none inside may be over before.
    let start = isInside ? 0 : Number.NEGATIVE_INFINITY;
    for (const { task, fromStart, gap } of before[index]!)
      start = Math.max(start, (fromStart ? starts[task]! : ends[task]!) + gap);
    const { units, perUnit, setUp, makeSafe } = work[index]!;
    starts[index] = start;
    ends[index] = start + setUp + units * perUnit + makeSafe;
    if (isInside) chain = Math.max(chain, ends[index]);
  }
  return chain;
}
