import { MINUTE } from '../../src/calendar/index.js';
import type { Placement, Plan } from '../../src/model/index.js';
import { createRandom } from '../../src/planner/random.js';

/** The plan with one used window withdrawn, or cut by a step or two at its end. */
export function changedPlan(
  of: Plan,
  base: readonly Placement[],
  step: number,
  seed: number,
): Plan {
  const random = createRandom(seed);
  const used = [...new Set(base.flatMap((placement) => placement.window ?? []))];
  const id = used[random.below(used.length)];
  const kind = random.below(3);
  return {
    ...of,
    windows: of.windows.map((window) => {
      if (window.id !== id) return window;
      if (kind === 0) return { ...window, status: 'withdrawn' };
      return { ...window, end: window.end - kind * step * MINUTE };
    }),
  };
}
