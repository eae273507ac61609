import type { Line } from './line.js';

/**
 * For each task, the tasks that a bin might as well hold instead: as long or longer, with all its followers and perhaps more.
 *
 * Between equals the smaller number counts as better, so that no two tasks are each better than the other.
 *
 * @see Jackson, "A computing procedure for a line balancing problem", Management Science 2(3), 1956; from memory.
 */
export function betterTasks(line: Line): readonly Int32Array[] {
  const { n, words, times, followers, followerCount } = line;
  const covers = (a: number, b: number): boolean => {
    for (let w = 0; w < words; w++) {
      if ((followers[b * words + w]! & ~followers[a * words + w]!) !== 0) return false;
    }
    return true;
  };
  const comesBefore = (a: number, b: number): boolean =>
    ((followers[a * words + (b >> 5)]! >>> (b & 31)) & 1) === 1;
  return Array.from({ length: n }, (_, task) => {
    const better: number[] = [];
    for (let other = 0; other < n; other++) {
      if (other === task || times[other]! < times[task]! || comesBefore(other, task)) continue;
      if (!covers(other, task)) continue;
      const alike = times[other] === times[task] && followerCount[other] === followerCount[task];
      if (!alike || other < task) better.push(other);
    }
    return Int32Array.from(better);
  });
}
