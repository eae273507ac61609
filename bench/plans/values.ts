// What a plan comes to, reckoned from its placements alone.
import { unitsLeft, type Plan } from '../../src/model/index.js';
import type { Allocation } from '../../src/planner/search/index.js';

/**
 * Activities not placed as a whole, their units left out, minutes late, minutes from the first window to the last finish,
 * windows in use.
 */
export type Values = readonly [number, number, number, number, number];

/** What is late of a package's date counts once. A whole piece is one unit. */
export function valuesOf(plan: Plan, placements: Allocation['placements']): Values {
  const ends = new Map<string, number>();
  const units = new Map<string, number>();
  for (const { activity, to, units: some = 1 } of placements) {
    ends.set(activity, Math.max(ends.get(activity) ?? 0, to));
    units.set(activity, (units.get(activity) ?? 0) + some);
  }
  const late = new Map<string, number>();
  const out: number[] = [];
  for (const { id, package: pack, keyDate, work } of plan.activities) {
    const left = unitsLeft(work) - (units.get(id) ?? 0);
    if (left > 0) out.push(left);
    if (keyDate === undefined || !ends.has(id)) continue;
    const key = `${pack} ${keyDate}`;
    late.set(key, Math.max(late.get(key) ?? 0, (ends.get(id)! - keyDate) / 60_000));
  }
  const base = Math.min(...plan.windows.map(({ start }) => start));
  const windows = new Set(placements.flatMap(({ window }) => window ?? []));
  return [
    out.length,
    out.reduce((sum, left) => sum + left, 0),
    [...late.values()].reduce((sum, minutes) => sum + minutes, 0),
    (Math.max(base, ...ends.values()) - base) / 60_000,
    windows.size,
  ];
}

/** Where two differ first; -1: nowhere. */
export function firstApart(ours: Values, theirs: Values): number {
  return ours.findIndex((value, i) => value !== theirs[i]);
}

/** Below 0 where ours is better. */
export function compareValues(ours: Values, theirs: Values): number {
  const at = firstApart(ours, theirs);
  return at < 0 ? 0 : ours[at]! - theirs[at]!;
}
