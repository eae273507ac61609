import type { Placement } from '../../model/index.js';

/** Work that lies elsewhere in another plan. Minutes inside a window are no move. */
export interface WindowMove {
  readonly activity: string;
  /** Window it was in; `outside` for work that needs none; null where it had no place. */
  readonly from: string | null;
  /** Window it is in now; null where it has no place any more. */
  readonly to: string | null;
  /** Units of repeated work that moved. */
  readonly units?: number;
}

const outside = 'outside';

/** What lies in another window in the second plan than in the first, by activity in the order of the plans. */
export function windowMoves(
  before: readonly Placement[],
  after: readonly Placement[],
): WindowMove[] {
  const activities = new Set([...before, ...after].map((placement) => placement.activity));
  return [...activities].flatMap((activity) => {
    const own = (placement: Placement): boolean => placement.activity === activity;
    const [was, is] = [amounts(before.filter(own)), amounts(after.filter(own))];
    const repeated = [...before, ...after].some(
      (placement) => own(placement) && placement.units !== undefined,
    );
    return movesBetween(was, is).map(({ from, to, count }) => ({
      activity,
      from,
      to,
      ...(repeated && { units: count }),
    }));
  });
}

/** Units, or one piece, by window in order of time. */
function amounts(placements: readonly Placement[]): Map<string, number> {
  const all = new Map<string, number>();
  for (const { window, units = 1 } of placements.toSorted((a, b) => a.from - b.from))
    all.set(window ?? outside, (all.get(window ?? outside) ?? 0) + units);
  return all;
}

interface Step {
  readonly from: string | null;
  readonly to: string | null;
  readonly count: number;
}

/** What one side has too much of goes, in order of time, where the other has more. */
function movesBetween(was: ReadonlyMap<string, number>, is: ReadonlyMap<string, number>): Step[] {
  const lost = surplus(was, is);
  const won = surplus(is, was);
  const steps: Step[] = [];
  while (lost.length > 0 || won.length > 0) {
    const [from, to] = [lost[0], won[0]];
    const count = Math.min(from?.count ?? Infinity, to?.count ?? Infinity);
    steps.push({ from: from?.window ?? null, to: to?.window ?? null, count });
    for (const side of [lost, won]) {
      const first = side[0];
      if (first && (first.count -= count) === 0) side.shift();
    }
  }
  return steps;
}

function surplus(
  of: ReadonlyMap<string, number>,
  over: ReadonlyMap<string, number>,
): { window: string; count: number }[] {
  return [...of].flatMap(([window, count]) => {
    const more = count - (over.get(window) ?? 0);
    return more > 0 ? [{ window, count: more }] : [];
  });
}
