import type { Tell } from './types.js';
import type { PlacedWork } from './types.js';
import type { Activity } from './words.js';
import type { Job } from './work.js';

interface Piece extends PlacedWork {
  readonly work: Activity;
}

/** Whether both need a line and a place in common. No line named: every line; no extent: everywhere. */
export function meet(activity: Activity, other: Activity): boolean {
  const onLine =
    activity.lines.length === 0 ||
    other.lines.length === 0 ||
    activity.lines.some((line) => other.lines.includes(line));
  const [a, b] = [activity.extent, other.extent];
  if (!onLine || !a || !b) return onLine;
  // Two that only touch are apart, but not two at one and the same point.
  return Math.max(a.from, b.from) < Math.min(a.to, b.to) || (a.from === b.from && a.to === b.to);
}

/** Every pair of pieces of inside work that goes on in one minute at one place, the earlier first. */
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
      if (other.work !== piece.work && meet(other.work, piece.work)) yield [other, piece];
    going.push(piece);
  }
}

/** Two activities at the same place and minute. Neither must be alone there, and not both say `shared`. */
export interface Unsaid {
  readonly activity: string;
  readonly other: string;
}

/** Reports work that must be alone and is not. Returns the pairs that nobody said may share the place. */
export function checkSamePlace(jobs: ReadonlyMap<string, Job>, tell: Tell): Unsaid[] {
  const unsaid = new Map<string, Unsaid>();
  const reported = new Set<string>();
  for (const [first, second] of meetings(jobs)) {
    const pair = [first.activity, second.activity];
    const key = JSON.stringify(pair.toSorted());
    const needs = [first.work.occupies, second.work.occupies];
    if (needs.includes('alone')) {
      if (reported.has(key)) continue;
      reported.add(key);
      const [alone, beside] = needs[0] === 'alone' ? pair : pair.toReversed();
      tell({
        code: 'not-alone',
        activity: alone!,
        text: `${alone} must be alone at its place, and ${beside} goes on there at the same time`,
      });
    } else if (needs.some((need) => need !== 'shared'))
      unsaid.set(key, { activity: first.activity, other: second.activity });
  }
  return [...unsaid.values()];
}
