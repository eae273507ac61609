import type { Budget } from '../budget.js';
import type { Line } from './line.js';
import { Loads } from './loads.js';

/** What makes a task worth taking early, beside its own time: its weight and its number of followers, as shares. */
export interface Taste {
  readonly weight: number;
  readonly followers: number;
}

/**
 * Fills one bin after another, each with the best of its first `limit` maximal loads.
 *
 * Returns the bin of each task, or `undefined` when the budget ended or `fewerThan` bins were not enough.
 */
export function fillBins(
  line: Line,
  taste: Taste,
  limit: number,
  fewerThan: number,
  budget?: Budget,
): Int32Array | undefined {
  const { n, times } = line;
  const value = Float64Array.from(
    times,
    (time, task) =>
      time + taste.weight * line.weight[task]! + taste.followers * line.followerCount[task]!,
  );
  const bins = new Int32Array(n);
  const loads = new Loads(line);
  loads.waiting.set(line.predecessorCount);
  let ready = [...times.keys()].filter((task) => line.predecessorCount[task] === 0);
  let done = 0;
  for (let bin = 0; done < n; bin++) {
    if (bin + 1 >= fewerThan || budget?.expired() === true) return undefined;
    ready.sort((a, b) => value[b]! - value[a]! || a - b);
    loads.queue.set(ready);
    loads.queued = ready.length;
    const best = bestLoad(loads, value, limit);
    const inLoad = new Set(best);
    ready = ready.filter((task) => !inLoad.has(task));
    for (const task of best) {
      bins[task] = bin;
      done++;
      for (const next of line.successors[task]!) {
        if (--loads.waiting[next]! === 0 && !inLoad.has(next)) ready.push(next);
      }
    }
  }
  return bins;
}

/** The load of most value among the first `limit` maximal ones. */
function bestLoad(loads: Loads, value: Float64Array, limit: number): Int32Array {
  let most = -Infinity;
  let best = new Int32Array(0);
  loads.walk(Infinity, limit, () => {
    let sum = 0;
    for (let i = 0; i < loads.size; i++) sum += value[loads.chosen[i]!]!;
    if (sum > most) {
      most = sum;
      best = loads.chosen.slice(0, loads.size);
    }
    return true;
  });
  return best;
}
