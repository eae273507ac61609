import type { Activity } from './activity.js';

/** What a piece of work asks of a window's time: two activities with equal needs see the same usable minutes. */
export interface Needs {
  readonly isolation: readonly string[];
  readonly loud: boolean;
}

/** Ordinary inside work: no isolation, not loud. */
export const ordinaryNeeds: Needs = { isolation: [], loud: false };

export function needsOf(activity: Pick<Activity, 'isolation' | 'loud'>): Needs {
  return { isolation: activity.isolation, loud: activity.loud };
}

/** Equal for equal needs, whatever the order of the sections. */
export function needsKey(needs: Needs): string {
  return JSON.stringify([[...needs.isolation].sort(), needs.loud]);
}
