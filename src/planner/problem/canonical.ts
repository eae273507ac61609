import type { AccessWindow, Plan } from '../../model/index.js';

/**
 * The plan with its rows in an order that hangs on what they say alone, so that a search comes to the same answer
 * whichever way they are sorted: windows by time, everything else by name.
 */
export function canonicalOf(plan: Plan): Plan {
  return {
    ...plan,
    windows: plan.windows.toSorted(byTime),
    activities: plan.activities.toSorted((a, b) => byText(a.id, b.id)),
    resources: plan.resources.toSorted((a, b) => byText(a.id, b.id)),
  };
}

function byTime(a: AccessWindow, b: AccessWindow): number {
  return a.start - b.start || a.end - b.end || byText(a.id, b.id);
}

/** By code units: the same in every language. */
function byText(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
