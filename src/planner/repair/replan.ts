import { because, type Plan, type Reasoned } from '../../model/index.js';
import type { Placement } from '../fit/index.js';
import type { AllocateOptions } from '../search/allocate.js';
import type { Allocation } from '../search/types.js';
import { sayRepair } from './repair-sentences.js';
import { repair, type More, type Repair } from './repair.js';

/** An activity of which something is no longer in the window it was in, or that had no place. */
export interface Move extends Reasoned {
  readonly activity: string;
  readonly package: string;
  /** Empty when it was not placed. */
  readonly before: readonly Placement[];
  /** Empty when it finds no place now. */
  readonly after: readonly Placement[];
}

/** A plan for a changed document that moves little of the plan before: itself, what moved and why. */
export interface Replan {
  readonly allocation: Allocation;
  /** Minutes inside a window are no move. */
  readonly moved: readonly Move[];
  /** Packages of which something moved, in the order of the plan. */
  readonly packagesMoved: readonly string[];
  /** Of the pieces that had a place, so many leave their window, and so many have to at the least. `proven`: no fewer do. */
  readonly fewest: {
    readonly moved: number;
    readonly atLeast: number;
    readonly proven: boolean;
  };
  /** What moving more would gain; null where nothing was found. */
  readonly more: More | null;
}

/** A plan for what is so now that moves as few pieces as it can of the plan made before: `repair`, told by activity. */
export function replan(
  plan: Plan,
  before: Pick<Allocation, 'placements'>,
  options: AllocateOptions,
): Replan {
  const { allocation, moved, fewest, more } = repair(plan, before.placements, options);
  const moves = movesOf(plan, before.placements, allocation.placements, moved);
  return {
    allocation,
    moved: moves,
    packagesMoved: [...new Set(moves.map((move) => move.package))],
    fewest: { moved: fewest.moved, atLeast: fewest.lowerBound, proven: fewest.proven },
    more,
  };
}

function movesOf(
  plan: Plan,
  before: readonly Placement[],
  after: readonly Placement[],
  moved: Repair['moved'],
): Move[] {
  const reasons = new Map(moved.map(({ activity, reason }) => [activity, reason]));
  return plan.activities.flatMap((activity): Move[] => {
    const own = (all: readonly Placement[]): Placement[] =>
      all
        .filter((placement) => placement.activity === activity.id)
        .toSorted((a, b) => a.from - b.from);
    const [was, is] = [own(before), own(after)];
    const isNew = was.length === 0 && is.length > 0;
    const why = reasons.get(activity.id) ?? (isNew ? sayRepair('had-no-place', {}) : undefined);
    return why === undefined
      ? []
      : [
          {
            activity: activity.id,
            package: activity.package,
            before: was,
            after: is,
            ...because(why),
          },
        ];
  });
}
