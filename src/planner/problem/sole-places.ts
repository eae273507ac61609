import { samePlace, type Activity } from '../../model/index.js';
import type { Supply, Task } from './problem.js';

const PREFIX = 'the place of ';

/** Whether the name of a supply is that of such a place. */
export const isSolePlace = (id: string): boolean => id.startsWith(PREFIX);

/** A place that some work takes alone, as something of which there is so much: what works there alone takes all of it. */
export interface SolePlace {
  readonly id: string;
  readonly capacity: number;
  /** By task, how much it takes. */
  readonly amounts: readonly { readonly task: number; readonly amount: number }[];
}

/** The places that work takes alone and other work needs too. Work alone on equal lines and extent shares one. */
export function solePlacesOf(activities: readonly Activity[]): readonly SolePlace[] {
  const places = new Map<string, number[]>();
  activities.forEach((activity, task) => {
    if (activity.occupies !== 'alone' || activity.place === 'outside') return;
    const key = JSON.stringify([activity.lines.toSorted(), activity.extent]);
    const known = places.get(key);
    if (known) known.push(task);
    else places.set(key, [task]);
  });
  return [...places.values()].flatMap((alone): SolePlace[] => {
    const own = new Set(alone);
    const first = activities[alone[0]!]!;
    const beside = activities.flatMap((other, task) =>
      !own.has(task) && samePlace(first, other) ? [task] : [],
    );
    if (beside.length + alone.length < 2) return [];
    const capacity = Math.max(1, beside.length);
    return [
      {
        id: `${PREFIX} ${alone.map((task) => activities[task]!.id).join(', ')}`,
        capacity,
        amounts: [
          ...alone.map((task) => ({ task, amount: capacity })),
          ...beside.map((task) => ({ task, amount: 1 })),
        ],
      },
    ];
  });
}

export const soleSupply = ({ id, capacity }: SolePlace): Supply => ({
  id,
  profile: { at: [Number.NEGATIVE_INFINITY], free: [capacity] },
  sole: true,
});

/** What each task takes of those places, which are supplies from index `from` on; empty where there are none. */
export function soleDemands(
  places: readonly SolePlace[],
  count: number,
  from: number,
): readonly Task['demands'][] {
  if (places.length === 0) return [];
  const demands = Array.from({ length: count }, (): Task['demands'][number][] => []);
  places.forEach(({ amounts }, at) => {
    for (const { task, amount } of amounts) demands[task]!.push({ supply: from + at, amount });
  });
  return demands;
}
