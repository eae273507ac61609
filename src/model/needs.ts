import type { Activity } from './activity.js';

/** What a piece of work asks of a window's time: two activities with equal needs see the same usable minutes. */
export interface Needs {
  readonly isolation: readonly string[];
  readonly loud: boolean;
  /** Names of the closed time of the rules that bears on it; absent: none. */
  readonly heeds?: readonly string[];
}

/** Ordinary inside work: no isolation, not loud. */
export const ordinaryNeeds: Needs = { isolation: [], loud: false };

export function needsOf(activity: Pick<Activity, 'isolation' | 'loud' | 'heeds'>): Needs {
  const { isolation, loud, heeds } = activity;
  return { isolation, loud, ...(heeds && heeds.length > 0 && { heeds }) };
}

/** Equal for equal needs, whatever the order of the sections. */
export function needsKey(needs: Needs): string {
  const { isolation, loud, heeds = [] } = needs;
  return JSON.stringify([[...isolation].sort(), loud, [...heeds].sort()]);
}
