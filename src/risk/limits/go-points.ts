import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, GoPoint } from '../../model/index.js';
import type { CutOff, DecisionPoint, GoPointTime } from '../types.js';

/** The latest moment at which work may begin: its cut-off, or its point of no return where that is earlier. */
function beginsBy(cutOff: CutOff, decisions: readonly DecisionPoint[]): Instant {
  const noReturn = decisions.find(
    (decision) => decision.activity === cutOff.activity,
  )?.pointOfNoReturn;
  return Math.min(cutOff.latestStart, noReturn ?? Infinity);
}

/**
 * When each go/no-go point of the window falls, and the work for which it comes too late. One that comes before work
 * that is not done in this window is left out.
 */
export function goPointTimes(
  points: readonly GoPoint[],
  window: AccessWindow,
  cutOffs: readonly CutOff[],
  decisions: readonly DecisionPoint[],
): readonly GoPointTime[] {
  const work = cutOffs.filter((cutOff) => cutOff.activity !== undefined);
  return points
    .filter((point) => point.window === window.id)
    .flatMap((point): GoPointTime[] => {
      const { id, name, holder, before } = point;
      const of = work.find((off) => off.activity === before);
      if (before !== undefined && !of) return [];
      const at = of ? beginsBy(of, decisions) : Date.parse(point.at!);
      const tooLateFor = work
        .filter((off) => off.plannedStart >= at && beginsBy(off, decisions) < at)
        .map((off) => off.activity!);
      return [{ id, name, holder, at, ...(before !== undefined && { before }), tooLateFor }];
    })
    .sort((a, b) => a.at - b.at);
}
