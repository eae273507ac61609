import { replan } from '../engine/search.js';
import type { Placement, Plan } from '../model/index.js';
import { givenPlan } from '../planner/given/given-plan.js';
import { windowMoves, type WindowMove } from '../planner/given/moves.js';
import type { Broken } from '../planner/given/types.js';
import type { Allocation } from '../planner/search/types.js';
import type { Arguments } from './arguments.js';

/** A plan of work mended for the files as they are. */
export interface MendedPlan {
  readonly allocation: Allocation;
  /** Of the plan it was made from. */
  readonly from: { readonly id: string };
  /** What of that plan no longer held. */
  readonly broken: readonly Broken[];
  readonly moved: readonly (WindowMove & { readonly reason: string })[];
}

/** A plan made before, changed as little as the files allow. */
export function mendedPlan(
  plan: Plan,
  asked: Pick<Arguments, 'first' | 'seconds' | 'seed'>,
  from: readonly Placement[],
): MendedPlan {
  const given = givenPlan(plan, from, { first: asked.first });
  const { allocation, moved } = replan(
    plan,
    { ...given.allocation, placements: from },
    {
      first: asked.first,
      ...(asked.seconds !== undefined && { seconds: asked.seconds }),
      seed: asked.seed,
      clock: () => performance.now(),
    },
  );
  const why = new Map(moved.map((one) => [one.activity, one.why]));
  return {
    allocation,
    from: { id: given.id },
    broken: given.broken,
    moved: windowMoves(from, allocation.placements).map((one) => ({
      ...one,
      reason: why.get(one.activity) ?? 'it is not in the plan any more',
    })),
  };
}

export function mendedLines({ from, broken, moved }: MendedPlan): string[] {
  const place = (window: string | null): string => window ?? 'no place';
  return [
    `Mended from plan ${from.id}: ${moved.length === 0 ? 'nothing moves to another window' : `${moved.length} ${moved.length === 1 ? 'piece moves' : 'pieces move'} to another window`}.`,
    ...(broken.length > 0 ? ['What did not hold:', ...broken.map((one) => `  ${one.text}`)] : []),
    ...moved.map(
      (one) =>
        `  ${one.activity}${one.units === undefined ? '' : `, ${one.units} units`}: ${place(one.from)} to ${place(one.to)}: ${one.reason}.`,
    ),
  ];
}
