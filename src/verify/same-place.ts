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

/** Two activities at one place in one minute of which neither says that it is alone there, and one does not say `shared`. */
export interface Unsaid {
  readonly one: string;
  readonly other: string;
}

/** Tells of work that should be alone and is not; gives the pairs of which it is not said that they may share. */
export function checkSamePlace(jobs: ReadonlyMap<string, Job>, tell: Tell): Unsaid[] {
  const unsaid = new Map<string, Unsaid>();
  const reported = new Set<string>();
  for (const [one, other] of meetings(jobs)) {
    const pair = [one.activity, other.activity];
    const key = JSON.stringify(pair.toSorted());
    const [first, second] = [one.work.occupies, other.work.occupies];
    if (first === 'alone' || second === 'alone') {
      if (reported.has(key)) continue;
      reported.add(key);
      const [alone, beside] = first === 'alone' ? pair : pair.toReversed();
      tell({
        code: 'not-alone',
        activity: alone!,
        text: `${alone} must be alone at its place, and ${beside} goes on there at the same time`,
      });
    } else if (first !== 'shared' || second !== 'shared')
      unsaid.set(key, { one: one.activity, other: other.activity });
  }
  return [...unsaid.values()];
}
