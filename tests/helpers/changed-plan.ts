import { MINUTE } from '../../src/calendar/index.js';
import type { Placement, Plan } from '../../src/model/index.js';
import { createRandom } from '../../src/planner/kernels/random.js';

/** The plan with one used window withdrawn, or cut by a step or two at its end. */
export function changedPlan(
  of: Plan,
  base: readonly Placement[],
  step: number,
  seed: number,
): Plan {
  const random = createRandom(seed);
  const used = [...new Set(base.flatMap((one) => one.window ?? []))];
  const id = used[random.below(used.length)];
  const kind = random.below(3);
  return {
    ...of,
    windows: of.windows.map((one) => {
      if (one.id !== id) return one;
      if (kind === 0) return { ...one, status: 'withdrawn' };
      return { ...one, end: one.end - kind * step * MINUTE };
    }),
  };
}
