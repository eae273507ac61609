import { compileNetwork, type CompiledNetwork } from '../kernel/compile-network.js';
import type { RiskNetwork } from '../kernel/network.js';
import { LatestStarts } from '../kernel/latest-starts.js';
import { randomState } from '../kernel/random.js';
import { valuesAt } from '../kernel/ranks.js';
import { eachBatch } from '../kernel/run-block.js';
import { runSpace, type RunSpace } from '../kernel/run-space.js';
import { LANES, TICKS, ticksOf } from '../kernel/sampling.js';

/** Latest start of a node with which, in the share of runs asked for, everything that must follow is over in time. */
export interface ChanceLimit {
  /** Minutes from the network's zero. */
  readonly start: number;
  /** Standard error of it in minutes, from the order statistics around it. */
  readonly errorMinutes: number;
}

export interface ChanceLimitOptions {
  readonly runs: number;
  readonly seed: number;
  readonly deadlineMinutes: number;
  /** Above 0 and below 1. */
  readonly chance: number;
  /** Minutes kept free after a node's own finish, by index. */
  readonly after: (index: number) => number;
}

/**
 * For each group of nodes asked about, how late all of it may start so that in `chance` of the runs all that waits for it,
 * itself included, is finished by the deadline: each run of `simulate` with that seed, walked backwards. What else may be
 * late is not counted: that is what the chance of the window says.
 *
 * O(runs (nodes + links)). @throws {RangeError} When the network makes no sense.
 *
 * @returns By the first node of each group.
 */
export function chanceLimits(
  network: RiskNetwork,
  options: ChanceLimitOptions,
  asked: readonly NodeGroup[],
): ReadonlyMap<number, ChanceLimit> {
  const compiled = compileNetwork(network);
  const space = runSpace(compiled, randomState(options.seed), 1);
  const limits = new RunsBackward(compiled, options, asked);
  eachBatch(compiled, space, options.runs, (offset, lanesUsed, first) =>
    limits.take(space, offset, lanesUsed, first),
  );
  return limits.found();
}

/** By index, nodes that are one thing seen several times, such as a step that several kinds of work wait for. */
export type NodeGroup = readonly [number, ...number[]];

/** Places in the list of starts, each with how many ticks later than it the start asked about may be. */
interface Soonest {
  readonly places: readonly { readonly at: number; readonly later: number }[];
  readonly starts: Int32Array;
}

/** The same of runs that somebody else draws: each batch is handed in as it is drawn, in any order, up to the last. */
export class RunsBackward {
  readonly #chance: number;
  readonly #latest: LatestStarts;
  /** By the first node of each group: whose starts they are, and how many ticks before those. */
  readonly #asked = new Map<number, { readonly soonest: Soonest; readonly before: number }>();
  readonly #worked = new Map<string, Soonest>();
  /** The latest starts of the batch that was taken last, where nothing but the deadline is kept to. */
  readonly ofDeadline: LatestStarts | undefined;

  constructor(
    network: CompiledNetwork,
    { runs, deadlineMinutes, chance, after }: Omit<ChanceLimitOptions, 'seed'>,
    asked: readonly NodeGroup[],
  ) {
    const { nodeAt } = network;
    const deadline = Math.floor(deadlineMinutes * TICKS);
    const finishBy = Int32Array.from(nodeAt, (index) => deadline - ticksOf(after(index)));
    const startBy = finishBy.reduce((last, by) => Math.max(last, by), deadline);
    this.#chance = chance;
    this.#latest = new LatestStarts(network, { startBy, finishBy });
    for (const group of asked) {
      const standing = group.map((index) => this.#latest.of(nodeAt.indexOf(index)));
      const { before } = standing[0]!;
      const places = standing.map((own) => ({
        at: own.position * LANES,
        later: before - own.before,
      }));
      const key = JSON.stringify(places);
      const soonest = this.#worked.get(key) ?? { places, starts: new Int32Array(runs) };
      this.#worked.set(key, soonest);
      this.#asked.set(group[0], { soonest, before });
    }
    if (finishBy.every((by) => by === deadline)) this.ofDeadline = this.#latest;
  }

  take(space: RunSpace, offset: number, lanesUsed: number, first: number): void {
    this.#latest.pass(space, offset);
    for (const { places, starts } of this.#worked.values()) {
      const [only, ...others] = places;
      const { at } = only!;
      starts.set(this.#latest.starts.subarray(at, at + lanesUsed), first);
      for (const { at: from, later } of others)
        for (let lane = 0; lane < lanesUsed; lane += 1) {
          const by = this.#latest.starts[from + lane]! + later;
          if (by < starts[first + lane]!) starts[first + lane] = by;
        }
    }
  }

  found(): ReadonlyMap<number, ChanceLimit> {
    const limits = new Map(
      [...this.#worked.values()].map((soonest) => [soonest, limitOf(soonest.starts, this.#chance)]),
    );
    return new Map(
      [...this.#asked].map(([index, { soonest, before }]) => {
        const { start, errorMinutes } = limits.get(soonest)!;
        return [index, { start: start - before / TICKS, errorMinutes }];
      }),
    );
  }
}

function limitOf(starts: Int32Array, chance: number): ChanceLimit {
  const runs = starts.length;
  // So many of the runs allow this start or a later one.
  const rank = runs - Math.ceil(chance * runs);
  const spread = Math.sqrt(runs * chance * (1 - chance));
  const [low, own, high] = valuesAt(
    starts,
    [rank - spread, rank, rank + spread].map((value) =>
      Math.min(runs - 1, Math.max(0, Math.round(value))),
    ),
  ) as [number, number, number];
  return { start: own / TICKS, errorMinutes: (high / TICKS - low / TICKS) / 2 };
}
