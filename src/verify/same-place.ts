import type { ReportFault } from './types.js';
import type { PlacedWork } from './types.js';
import type { Activity } from './plan-types.js';
import { say } from './say.js';
import type { Job } from './work.js';

interface Piece extends PlacedWork {
  readonly work: Activity;
}

/** Whether two activities share a line and a place. No line named: all lines; no extent: everywhere. */
export function sharePlace(activity: Activity, other: Activity): boolean {
  const onLine =
    activity.lines.length === 0 ||
    other.lines.length === 0 ||
    activity.lines.some((line) => other.lines.includes(line));
  const [a, b] = [activity.extent, other.extent];
  if (!onLine || !a || !b) return onLine;
  // Extents that only touch do not overlap, but two equal points do.
  return Math.max(a.from, b.from) < Math.min(a.to, b.to) || (a.from === b.from && a.to === b.to);
}

/** Every pair of inside pieces at the same place and time, the earlier first. */
function* meetings(jobs: ReadonlyMap<string, Job>): Generator<readonly [Piece, Piece]> {
  const pieces: Piece[] = [];
  for (const { activity, pieces: own } of jobs.values())
    if (activity.place === 'inside')
      for (const piece of own) if (piece.from < piece.to) pieces.push({ ...piece, work: activity });
  pieces.sort((a, b) => a.from - b.from);
  let going: Piece[] = [];
  for (const piece of pieces) {
    going = going.filter((other) => other.to > piece.from);
    for (const other of going)
      if (other.work !== piece.work && sharePlace(other.work, piece.work)) yield [other, piece];
    going.push(piece);
  }
}

/** Two activities at the same place and time, neither of which must be alone and not both of which say `shared`. */
export interface UnstatedPair {
  readonly activity: string;
  readonly other: string;
}

/** Reports work that must be alone and is not. Returns pairs for which the plan does not say whether they may share the place. */
export function checkSamePlace(
  jobs: ReadonlyMap<string, Job>,
  report: ReportFault,
): UnstatedPair[] {
  const unstatedPairs = new Map<string, UnstatedPair>();
  const reported = new Set<string>();
  for (const [first, second] of meetings(jobs)) {
    const pair = [first.activity, second.activity];
    const key = JSON.stringify(pair.toSorted());
    const needs = [first.work.occupies, second.work.occupies];
    if (needs.includes('alone')) {
      if (reported.has(key)) continue;
      reported.add(key);
      const [alone, beside] = (needs[0] === 'alone' ? pair : pair.toReversed()) as [string, string];
      report({
        code: 'not-alone',
        activity: alone,
        text: say('must-be-alone', { activity: alone, other: beside }),
      });
    } else if (needs.some((need) => need !== 'shared'))
      unstatedPairs.set(key, { activity: first.activity, other: second.activity });
  }
  return [...unstatedPairs.values()];
}
