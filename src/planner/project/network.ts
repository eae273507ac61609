import { topologicalOrder } from './order.js';

/** A precedence arc: `to` starts no earlier than `lag` after `from` has finished. */
export type Arc = readonly [from: number, to: number, lag: number];

/** A scheduling problem made ready for search. `demand[i * kinds + k]` is what activity i takes of resource k. */
export interface Network {
  readonly n: number;
  readonly kinds: number;
  readonly durations: Int32Array;
  readonly demand: Int32Array;
  readonly capacities: Int32Array;
  readonly order: Int32Array;
  /** Arcs in, by activity: the predecessors and, beside each, its lag. */
  readonly before: readonly Int32Array[];
  readonly beforeLag: readonly Int32Array[];
  readonly after: readonly Int32Array[];
  readonly afterLag: readonly Int32Array[];
  /** Earliest start by releases and precedence. */
  readonly heads: Int32Array;
  /** Least time from an activity's finish to the end, by tails and precedence. */
  readonly tails: Int32Array;
}

export interface NetworkInput {
  readonly durations: Int32Array;
  readonly demands: readonly Int32Array[];
  readonly capacities: ArrayLike<number>;
  readonly precedence: readonly (readonly [number, number, number?])[];
  readonly releases?: Int32Array;
  readonly tails?: Int32Array;
}

/** @throws {RangeError} When the input is not a project: see `project`. */
export function createNetwork(input: NetworkInput): Network {
  const { durations, demands } = input;
  const n = durations.length;
  const kinds = demands.length;
  const capacities = Int32Array.from(input.capacities);
  if (capacities.length !== kinds)
    throw new RangeError(`${capacities.length} capacities for ${kinds} resources`);
  for (const list of [durations, input.releases, input.tails, ...demands]) {
    if (list === undefined) continue;
    if (list.length !== n) throw new RangeError(`${list.length} numbers for ${n} activities`);
    const bad = list.findIndex((value) => value < 0);
    if (bad >= 0) throw new RangeError(`${list[bad]} of activity ${bad} is below 0`);
  }
  const demand = new Int32Array(n * kinds);
  demands.forEach((list, k) => {
    list.forEach((amount, i) => {
      if (durations[i] === 0) return;
      if (amount > capacities[k]!)
        throw new RangeError(
          `activity ${i} takes ${amount} of resource ${k}, which has ${capacities[k]}`,
        );
      demand[i * kinds + k] = amount;
    });
  });
  const arcs = input.precedence.map(([a, b, lag = 0]): Arc => [a, b, lag]);
  const bad = arcs.find(([, , lag]) => !Number.isInteger(lag) || lag < 0);
  if (bad !== undefined) throw new RangeError(`lag ${bad[2]} is not a whole number from 0 up`);
  const order = topologicalOrder(n, arcs);
  return linked(
    { n, kinds, durations, demand, capacities, order },
    arcs,
    input.releases ?? new Int32Array(n),
    input.tails ?? new Int32Array(n),
  );
}

type Core = Pick<Network, 'n' | 'kinds' | 'durations' | 'demand' | 'capacities' | 'order'>;

function linked(core: Core, arcs: readonly Arc[], releases: Int32Array, ends: Int32Array): Network {
  const { n, durations, order } = core;
  const lists = () => Array.from({ length: n }, (): number[] => []);
  const before = lists();
  const beforeLag = lists();
  const after = lists();
  const afterLag = lists();
  for (const [a, b, lag] of arcs) {
    before[b]!.push(a);
    beforeLag[b]!.push(lag);
    after[a]!.push(b);
    afterLag[a]!.push(lag);
  }
  const heads = releases.slice();
  for (const i of order) {
    after[i]!.forEach((next, k) => {
      heads[next] = Math.max(heads[next]!, heads[i]! + durations[i]! + afterLag[i]![k]!);
    });
  }
  const tails = ends.slice();
  for (let p = n - 1; p >= 0; p--) {
    const i = order[p]!;
    before[i]!.forEach((prev, k) => {
      tails[prev] = Math.max(tails[prev]!, tails[i]! + durations[i]! + beforeLag[i]![k]!);
    });
  }
  const packed = (rows: number[][]) => rows.map((row) => Int32Array.from(row));
  return {
    ...core,
    before: packed(before),
    beforeLag: packed(beforeLag),
    after: packed(after),
    afterLag: packed(afterLag),
    heads,
    tails,
  };
}

/** The same project read from its end: a schedule of one, turned round, is a schedule of the other. */
export function reversedNetwork(network: Network): Network {
  return {
    ...network,
    order: network.order.slice().reverse(),
    before: network.after,
    beforeLag: network.afterLag,
    after: network.before,
    afterLag: network.beforeLag,
    heads: network.tails,
    tails: network.heads,
  };
}
