// What can be undone belongs to a tab: it never takes another tab's work back. So it is kept in the tab's own storage,
// which a reload leaves as it is and which goes with the tab.
import { noSteps, type KeptSteps } from '../../src/plan/index.js';

/** Most characters kept; the oldest steps are let go above it. A browser gives a page about five million. */
const MOST = 1_000_000;

const keyOf = (plan: string): string => `possession-fit/steps/${plan}`;

/** Keeps what can be undone and redone of a plan until the tab is closed. Without room nothing is kept. */
export function keepSteps(plan: string, steps: KeptSteps): void {
  try {
    if (steps.done.length + steps.undone.length === 0) sessionStorage.removeItem(keyOf(plan));
    else sessionStorage.setItem(keyOf(plan), withinRoom(steps));
  } catch {
    // Full or forbidden: the plan itself is safe elsewhere, only undo ends with the page.
  }
}

function withinRoom(steps: KeptSteps): string {
  let kept = steps;
  for (;;) {
    const text = JSON.stringify(kept);
    if (text.length <= MOST || kept.done.length + kept.undone.length === 0) return text;
    const half = <T>(list: readonly T[]): readonly T[] => list.slice(Math.ceil(list.length / 2));
    kept = { ...kept, done: half(kept.done), undone: half(kept.undone) };
  }
}

/** What was kept of a plan in this tab; empty where nothing was, or where it cannot be read. */
export function keptSteps(plan: string): KeptSteps {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(plan)) ?? 'null');
    return isSteps(kept) ? kept : noSteps;
  } catch {
    return noSteps;
  }
}

/** Steps of the version before are of another shape: their undo ends with it. */
function isSteps(kept: unknown): kept is KeptSteps {
  if (typeof kept !== 'object' || kept === null) return false;
  const { done, undone, again } = kept as Record<string, unknown>;
  const isStep = (item: unknown): boolean =>
    typeof item === 'object' &&
    item !== null &&
    'put' in item &&
    'taken' in item &&
    'label' in item;
  return (
    [done, undone].every((list) => Array.isArray(list) && list.every(isStep)) &&
    Array.isArray(again)
  );
}
