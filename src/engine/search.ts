// The searches, each with the independent check of what it found, in a module of their own so that they are loaded when
// first asked for.
import type { AccessWindow, AgreedPlans, Placement, Plan } from '../model/index.js';
import { givenPlan } from '../planner/given/given-plan.js';
import type { GivenPlan } from '../planner/given/types.js';
import { planId } from '../planner/plan-id.js';
import * as planner from '../planner/search/index.js';
import type { AllocateOptions, Replan, ShortNotice } from '../planner/search/index.js';
import type { Allocation } from '../planner/search/types.js';
import { checked } from './checked.js';

export { frozenPieces } from './frozen.js';

/** The best plan that was found, checked; so is every better one on the way. */
export function allocate(plan: Plan, options: AllocateOptions): Allocation {
  const { onBetter } = options;
  return checked(
    plan,
    planner.allocate(plan, {
      ...options,
      rehearse: (answer) => void checked(plan, answer),
      ...(onBetter && { onBetter: (soFar) => onBetter(() => checked(plan, soFar())) }),
    }),
  );
}

export function replan(plan: Plan, before: Allocation, options: AllocateOptions): Replan {
  const found = planner.replan(plan, before, options);
  return { ...found, allocation: checked(plan, found.allocation) };
}

export function shortNotice(
  plan: Plan,
  before: Allocation,
  window: AccessWindow,
  options: planner.ShortNoticeOptions,
): ShortNotice {
  const found = planner.shortNotice(plan, before, window, options);
  const windows = plan.windows.filter((item) => item.id !== window.id);
  const offered = { ...plan, windows: [...windows, window] };
  return { ...found, allocation: checked(offered, found.allocation) };
}

/** A plan made before as it stands in the plan as it is, checked; with what was proven of it where it was agreed. */
export function assess(
  plan: Plan,
  placements: readonly Placement[],
  agreed?: AgreedPlans,
): GivenPlan {
  const id = planId(placements);
  const all = [...(agreed?.now ? [agreed.now] : []), ...(agreed?.earlier ?? [])];
  const proof = all.find((item) => item.proof?.plan === id)?.proof;
  const found = givenPlan(plan, placements, { proof });
  return { ...found, allocation: checked(plan, found.allocation) };
}
