import type { Placement } from '../../../planner/fit/types.js';
import { verify } from '../../../verify/index.js';
import type { Draft } from '../draft.js';
import { planFurther } from '../plan-further.js';
import type { Situation } from '../situation.js';

/** The placements with what no longer keeps to the plan after the window moved where it does. */
export function settle(
  at: Situation,
  plan: Situation['plan'],
  placements: readonly Placement[],
): Pick<Draft, 'placements' | 'unplaced' | 'keyDates'> {
  const broken = verify(plan, { placements }).filter(
    (fault) => !at.known.has(JSON.stringify(fault)),
  );
  if (broken.length === 0) return { placements, unplaced: [], keyDates: [] };
  const free = new Set(broken.flatMap((fault) => fault.activity ?? []));
  return planFurther(
    plan,
    at.window.end,
    placements.filter(
      (placement) => !free.has(placement.activity) || placement.from < at.window.end,
    ),
    free,
    at.request.allocation,
    at.time,
  );
}
