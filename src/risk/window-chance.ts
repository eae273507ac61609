import { lengthMinutes, minutesBetween } from '../calendar/index.js';
import type { AccessWindow, Plan } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';
import { handbackNetwork } from './handback-network/handback-network.js';
import { withPlanRisk } from './plan-risk.js';
import { nearestRank, simulate, type Chance } from './kernel/simulation.js';

/** How sure the handback of one window is, and the margin that a chance would need. */
export interface WindowChance {
  readonly onTime: Chance;
  readonly marginMinutes: number;
  /** Margin with which the share asked for is reached by the same runs; 0 or more. */
  readonly marginNeededMinutes: number;
}

/**
 * Chance of handing one window back on time, by the simulation that `handback` uses and nothing else of it.
 *
 * @param share Above 0 and below 1.
 * @throws {RangeError} When a placement names no activity of the plan, or an option makes no sense.
 */
export function windowChance(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  options: { readonly seed: number; readonly runs: number },
  share: number,
): WindowChance {
  const built = handbackNetwork(
    plan,
    window,
    placements,
    withPlanRisk(plan.rules, window, options),
  );
  const deadlineMinutes = lengthMinutes(window);
  const { deadline, finishMinutes } = simulate(built.network, { ...options, deadlineMinutes });
  const planned = minutesBetween(window.start, built.plannedHandback);
  return {
    onTime: deadline!.onTime,
    marginMinutes: deadlineMinutes - planned,
    marginNeededMinutes: Math.max(0, Math.ceil(nearestRank(finishMinutes, share)) - planned),
  };
}
