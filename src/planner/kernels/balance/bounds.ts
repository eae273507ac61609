import type { Line } from './line.js';

/** The tasks in falling order of time, ties by number. */
export function byFallingTime(line: Line): Int32Array {
  return Int32Array.from(
    [...line.times.keys()].sort((a, b) => line.times[b]! - line.times[a]! || a - b),
  );
}

/**
 * Fewest bins that times could need if no precedence held, from below.
 *
 * For each threshold k up to half the capacity: times above `capacity - k` fill a bin each, times above half open one each,
 * and what the times from k up to half exceed the room beside the latter opens more.
 *
 * @see Martello and Toth, "Knapsack Problems" (1990), ch. 8, bound L2; quoted from memory.
 */
export function packingBound(falling: ArrayLike<number>, count: number, capacity: number): number {
  if (capacity === 0) return count > 0 ? 1 : 0;
  let large = 0;
  let largeSum = 0;
  while (large < count && falling[large]! * 2 > capacity) largeSum += falling[large++]!;
  let best = large;
  let sum = 0;
  // Large times above capacity - k leave no room for any time counted; as k falls, fewer of them do.
  let full = large;
  let fullSum = largeSum;
  for (let j = large; j < count; j++) {
    const k = falling[j]!;
    sum += k;
    while (full > 0 && falling[full - 1]! + k <= capacity) fullSum -= falling[--full]!;
    const room = (large - full) * capacity - (largeSum - fullSum);
    const need = large + Math.max(0, Math.ceil((sum - room) / capacity));
    if (need > best) best = need;
  }
  return best;
}

/**
 * For each task, how many bins before the last one it lies at the latest: 0 for "may be in the last bin", else negative.
 *
 * A task and those of its followers due by bin x must all fit between its own bin and x.
 */
export function latestBins(line: Line): Int32Array {
  const { n, words, times, capacity, followers, order } = line;
  const latest = new Int32Array(n);
  if (capacity === 0) return latest;
  for (let k = n - 1; k >= 0; k--) {
    const task = order[k]!;
    const due: number[] = [];
    for (let other = 0; other < n; other++) {
      if ((followers[task * words + (other >> 5)]! >>> (other & 31)) & 1) due.push(other);
    }
    due.sort((a, b) => latest[a]! - latest[b]!);
    let sum = times[task]!;
    // Doubled and sixfold counts of what takes half, a third or more of a bin (see fillOf).
    const half = new Fill(capacity);
    half.add(times[task]!);
    let best = 0;
    for (let i = 0; i < due.length; i++) {
      sum += times[due[i]!]!;
      half.add(times[due[i]!]!);
      const x = latest[due[i]!]!;
      if (i + 1 < due.length && latest[due[i + 1]!] === x) continue;
      best = Math.min(best, x + 1 - Math.max(Math.ceil(sum / capacity), half.bins()));
    }
    latest[task] = best;
  }
  return latest;
}

/** Bins needed by tasks that take half, a third or two thirds of a bin: two counts in which no bin holds more than 1. */
export class Fill {
  private halves = 0;
  private sixths = 0;
  private readonly capacity: number;
  constructor(capacity: number) {
    this.capacity = capacity;
  }
  add(time: number): void {
    this.halves += halvesOf(time, this.capacity);
    this.sixths += sixthsOf(time, this.capacity);
  }
  bins(): number {
    return Math.max(Math.ceil(this.halves / 2), Math.ceil(this.sixths / 6));
  }
}

/** 2 for more than half of a bin, 1 for exactly half, 0 below: no bin holds more than 2. */
export function halvesOf(time: number, capacity: number): number {
  return time * 2 > capacity ? 2 : time * 2 === capacity && time > 0 ? 1 : 0;
}

/** 6 above two thirds of a bin, 4 at two thirds, 3 above one third, 2 at one third: no bin holds more than 6. */
export function sixthsOf(time: number, capacity: number): number {
  const thirds = time * 3;
  if (time === 0) return 0;
  if (thirds > 2 * capacity) return 6;
  if (thirds === 2 * capacity) return 4;
  if (thirds > capacity) return 3;
  return thirds === capacity ? 2 : 0;
}

/** Fewest bins the whole problem could need, from below: packing without precedence, and the latest bins both ways. */
export function lineBound(line: Line, reversed: Line): number {
  if (line.n === 0) return 0;
  if (line.capacity === 0) return 1;
  const falling = Array.from(byFallingTime(line), (task) => line.times[task]!);
  let bins = Math.max(
    1,
    Math.ceil(line.total / line.capacity),
    packingBound(falling, line.n, line.capacity),
  );
  const fill = new Fill(line.capacity);
  for (const time of line.times) fill.add(time);
  bins = Math.max(bins, fill.bins());
  const late = latestBins(line);
  const early = latestBins(reversed);
  while (!windowsHold(line, late, early, bins) || !windowsHold(reversed, early, late, bins)) bins++;
  return bins;
}

/** Whether, with `bins` bins, every task has one between its earliest and latest and what is due by each bin fits. */
function windowsHold(line: Line, late: Int32Array, early: Int32Array, bins: number): boolean {
  const due = [...late.keys()].sort((a, b) => late[a]! - late[b]!);
  let sum = 0;
  const fill = new Fill(line.capacity);
  for (let i = 0; i < due.length; i++) {
    const task = due[i]!;
    const latest = bins + late[task]!;
    if (latest < 1 - early[task]!) return false;
    sum += line.times[task]!;
    fill.add(line.times[task]!);
    if (sum > latest * line.capacity || fill.bins() > latest) return false;
  }
  return true;
}
