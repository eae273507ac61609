import type { Supply, Task } from './problem.js';
import type { Skeleton } from './skeleton.js';
import { soleDemands } from './sole-places.js';

/** Lists of supplies up to which demands are kept for some work. */
const MOST_LISTS = 64;
const known = new WeakMap<Skeleton, Map<string, readonly Task['demands'][]>>();

/**
 * What each task takes of some supplies, the places last that work takes alone; one list for all problems of the work
 * that have these supplies. Amounts of one resource named twice add up.
 */
export function demandsOf(
  skeleton: Skeleton,
  supplies: readonly Supply[],
): readonly Task['demands'][] {
  let own = known.get(skeleton);
  if (!own) known.set(skeleton, (own = new Map<string, readonly Task['demands'][]>()));
  let key = '';
  for (const { id } of supplies) key += `${id.length} ${id}`;
  let demands = own.get(key);
  if (!demands) {
    if (own.size >= MOST_LISTS) own.clear();
    own.set(key, (demands = made(skeleton, supplies)));
  }
  return demands;
}

function made(
  { activities, solePlaces }: Skeleton,
  supplies: readonly Supply[],
): readonly Task['demands'][] {
  const count = supplies.filter(({ sole }) => !sole).length;
  const indexOf = new Map(supplies.slice(0, count).map(({ id }, index) => [id, index]));
  const places = count < supplies.length ? solePlaces : [];
  const sole = soleDemands(places, activities.length, count);
  return activities.map(({ resources }, task) => {
    const amounts = new Map<number, number>();
    for (const { resource, amount } of resources) {
      const supply = indexOf.get(resource);
      if (supply !== undefined && amount > 0)
        amounts.set(supply, (amounts.get(supply) ?? 0) + amount);
    }
    return [...[...amounts].map(([supply, amount]) => ({ supply, amount })), ...(sole[task] ?? [])];
  });
}
