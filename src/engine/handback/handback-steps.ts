import type { AccessWindow, Plan } from '../../model/index.js';
import type { Placement } from '../../planner/fit/types.js';

/** Runs of one window's what-ifs, times what all of them together cost beside one simulation of as many runs. */
const WHAT_IF_RUNS = 10_000;
const WHAT_IFS = 4;

/** Windows whose handback is worked out within some steps, and those that are past them. */
export interface WithinSteps {
  readonly windows: readonly AccessWindow[];
  readonly past: readonly AccessWindow[];
}

/**
 * As many windows, in their order, as can be simulated in so many steps, and the first in any case. A step is one piece
 * of work, or one step of protection, in one run.
 */
export function withinSteps(
  plan: Plan,
  windows: readonly AccessWindow[],
  placements: readonly Placement[],
  runs: number,
  steps: number,
): WithinSteps {
  const sizes = sizesOf(plan, placements);
  const each = runs + WHAT_IFS * Math.min(runs, WHAT_IF_RUNS);
  let spent = 0;
  const most = windows.findIndex(({ id }, at) => {
    spent += (sizes.get(id) ?? 0) * each;
    return at > 0 && spent > steps;
  });
  return most < 0
    ? { windows, past: [] }
    : { windows: windows.slice(0, most), past: windows.slice(most) };
}

/** Pieces of work and steps of protection that the handback of each window runs through. */
function sizesOf({ rules }: Plan, placements: readonly Placement[]): ReadonlyMap<string, number> {
  const guarding = rules.leadIn.length + rules.leadOut.length;
  const sizes = new Map<string, number>();
  for (const { window, units } of placements) {
    if (window === null) continue;
    // Repeated work is set up and made safe too.
    const pieces = units === undefined ? 1 : units + 2;
    sizes.set(window, (sizes.get(window) ?? guarding) + pieces);
  }
  return sizes;
}
