import type { Placement } from '../fit/index.js';
import { unitsLeft, type Plan } from '../../model/index.js';
import { verify } from '../check/verify.js';

/** Activities that cannot stay where they were, each with the reason. */
export function brokenBy(plan: Plan, placements: readonly Placement[]): Map<string, string> {
  const broken = new Map<string, string>();
  let kept = placements;
  for (;;) {
    // A predecessor that has to move may well find a place before its follower: that breaks nothing yet.
    const placed = new Set(kept.map((one) => one.activity));
    const faults = verify(plan, kept).filter(
      (fault) => fault.code !== 'link' || waitsForPlaced(plan, fault.activity, placed),
    );
    const hard = faults.filter((fault) => fault.code !== 'resource');
    // Of those that share too little of a resource, the last to begin gives way.
    const soft = faults.filter((fault) => fault.code === 'resource');
    const last = soft.toSorted((a, b) => startOf(kept, b.activity) - startOf(kept, a.activity))[0];
    const gone = hard.length > 0 ? hard : last ? [last] : [];
    if (gone.length === 0) return broken;
    for (const fault of gone)
      if (!broken.has(fault.activity)) broken.set(fault.activity, fault.text);
    kept = kept.filter((one) => !broken.has(one.activity));
  }
}

function waitsForPlaced(plan: Plan, id: string, placed: ReadonlySet<string>): boolean {
  const activity = plan.activities.find((one) => one.id === id)!;
  return activity.after.every((link) => {
    const before = plan.activities.find((one) => one.id === link.activity);
    return !before || unitsLeft(before.work) === 0 || placed.has(link.activity);
  });
}

function startOf(placements: readonly Placement[], id: string): number {
  return Math.min(...placements.filter((one) => one.activity === id).map((one) => one.from));
}

/** Activities that cannot stay where they were whatever else moves: not for what goes on before or beside them. */
export function brokenAlone(plan: Plan, placements: readonly Placement[]): ReadonlySet<string> {
  const others = new Set(['link', 'curing', 'resource']);
  return new Set(
    verify(plan, placements)
      .filter((fault) => !others.has(fault.code))
      .map((fault) => fault.activity),
  );
}
