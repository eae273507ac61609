import { topologicalOrder } from '../order.js';

/** A balancing problem made ready for search: all sets of tasks are rows of `words` 32-bit words. */
export interface Line {
  readonly n: number;
  readonly words: number;
  readonly capacity: number;
  readonly total: number;
  readonly times: Int32Array;
  /** Direct successors, those that follow from others left out. */
  readonly successors: readonly Int32Array[];
  /** How many direct predecessors (again without those that follow from others) each task has. */
  readonly predecessorCount: Int32Array;
  /** Row `i` holds every task that must not come before task `i`, itself left out. */
  readonly followers: Int32Array;
  readonly followerCount: Int32Array;
  /** Time of a task and of all its followers. */
  readonly weight: Float64Array;
  readonly order: Int32Array;
}

/** @throws {RangeError} When a time is negative, not whole or above `capacity`, or the precedence is no partial order. */
export function createLine(
  times: Int32Array,
  capacity: number,
  precedence: readonly (readonly [number, number])[],
): Line {
  const n = times.length;
  if (!Number.isInteger(capacity) || capacity < 0)
    throw new RangeError(`capacity ${capacity} is not a whole number from 0 up`);
  let total = 0;
  times.forEach((time, task) => {
    if (time < 0 || time > capacity)
      throw new RangeError(`time ${time} of task ${task} is not within 0 .. ${capacity}`);
    total += time;
  });
  const order = topologicalOrder(n, precedence);
  const words = Math.max(1, (n + 31) >> 5);
  const direct: Set<number>[] = Array.from({ length: n }, () => new Set<number>());
  for (const [a, b] of precedence) direct[a]!.add(b);

  const followers = new Int32Array(n * words);
  const followerCount = new Int32Array(n);
  const weight = new Float64Array(n);
  const successors: Int32Array[] = [];
  const predecessorCount = new Int32Array(n);
  for (let k = n - 1; k >= 0; k--) {
    const task = order[k]!;
    const row = task * words;
    const indirect = new Int32Array(words);
    for (const next of direct[task]!) {
      for (let w = 0; w < words; w++) indirect[w]! |= followers[next * words + w]!;
    }
    const kept = [...direct[task]!]
      .filter((next) => ((indirect[next >> 5]! >>> (next & 31)) & 1) === 0)
      .sort((a, b) => a - b);
    successors[task] = Int32Array.from(kept);
    for (const next of kept) predecessorCount[next]!++;
    followers.set(indirect, row);
    for (const next of kept) followers[row + (next >> 5)]! |= 1 << (next & 31);
    weight[task] = times[task]!;
    for (let other = 0; other < n; other++) {
      if (((followers[row + (other >> 5)]! >>> (other & 31)) & 1) === 0) continue;
      followerCount[task]!++;
      weight[task]! += times[other]!;
    }
  }
  return {
    n,
    words,
    capacity,
    total,
    times,
    successors,
    predecessorCount,
    followers,
    followerCount,
    weight,
    order,
  };
}
