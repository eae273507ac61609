import type { Network } from './network.js';

/** Least makespan by precedence alone. */
export function pathBound(network: Network): number {
  let best = 0;
  for (let i = 0; i < network.n; i++)
    best = Math.max(best, network.heads[i]! + network.durations[i]! + network.tails[i]!);
  return best;
}

/**
 * Least makespan by the work each resource must do: for each pair of a head and a tail, what has at least both must be
 * done between them.
 */
export function workBound(network: Network): number {
  const { n, kinds, demand, durations, capacities, heads, tails } = network;
  let best = 0;
  const byHead = [...heads.keys()].sort((a, b) => heads[b]! - heads[a]!);
  const ends = [...new Set(tails)].sort((a, b) => a - b);
  for (let k = 0; k < kinds; k++) {
    for (const tail of ends) {
      let work = 0;
      for (let p = 0; p < n; p++) {
        const i = byHead[p]!;
        if (tails[i]! < tail) continue;
        const amount = demand[i * kinds + k]! * durations[i]!;
        if (amount === 0) continue;
        work += amount;
        best = Math.max(best, heads[i]! + Math.ceil(work / capacities[k]!) + tail);
      }
    }
  }
  return best;
}
