import type { Skeleton } from './skeleton.js';

/** Minutes of the longest chain of work and gaps that begins and ends inside, whatever the calendars. O(tasks + ties). */
export function chainOf({
  activities,
  order,
  before,
  work,
}: Pick<Skeleton, 'activities' | 'order' | 'before' | 'work'>): number {
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
