import type { AccessWindow, Activity, Link, Plan } from '../../model/index.js';

/**
 * The plan with its rows in an order that hangs on what they say alone, so that a search comes to the same answer
 * whichever way they are sorted: windows by time, everything else by name, and so what a row waits for and needs.
 */
export function canonicalOf(plan: Plan): Plan {
  return {
    ...plan,
    windows: plan.windows.toSorted(byTime),
    activities: plan.activities.map(inOrder).sort((a, b) => byText(a.id, b.id)),
    resources: plan.resources.toSorted((a, b) => byText(a.id, b.id)),
  };
}

/** The same activity where its lists are in order. */
function inOrder(activity: Activity): Activity {
  const after = activity.after.toSorted(byLink);
  const resources = activity.resources.toSorted((a, b) => byText(a.resource, b.resource));
  const isInOrder =
    after.every((link, i) => link === activity.after[i]) &&
    resources.every((need, i) => need === activity.resources[i]);
  return isInOrder ? activity : { ...activity, after, resources };
}

function byLink(a: Link, b: Link): number {
  return (
    byText(a.activity, b.activity) ||
    byText(a.from, b.from) ||
    a.gapMinutes - b.gapMinutes ||
    Number(a.cured ?? false) - Number(b.cured ?? false)
  );
}

function byTime(a: AccessWindow, b: AccessWindow): number {
  return a.start - b.start || a.end - b.end || byText(a.id, b.id);
}

/** By code units: the same in every language. */
function byText(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
