import { compileNetwork, type CompiledNetwork } from '../kernel/compile-network.js';
import type { RiskNetwork } from '../kernel/network.js';
import { limitsOf, passBackward, type Limits } from '../kernel/pass-backward.js';
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
 * For each node asked about, how late it may start so that in `chance` of the runs all that waits for it, itself
 * included, is finished by the deadline: each run of `simulate` with that seed, walked backwards. What else may be late
 * is not counted: that is what the chance of the window says.
 *
 * O(runs (nodes + links)). @throws {RangeError} When the network makes no sense.
 */
export function chanceLimits(
  network: RiskNetwork,
  options: ChanceLimitOptions,
  asked: readonly number[],
): ReadonlyMap<number, ChanceLimit> {
  const compiled = compileNetwork(network);
  const space = runSpace(compiled, randomState(options.seed), 1);
  const limits = new RunsBackward(compiled, options, asked);
  eachBatch(compiled, space, options.runs, (offset, lanesUsed, first) =>
    limits.take(space, offset, lanesUsed, first),
  );
  return limits.found();
}

/** The same of runs that somebody else draws: each batch is handed in as it is drawn, in any order, up to the last. */
export class RunsBackward {
  readonly #network: CompiledNetwork;
  readonly #chance: number;
  readonly #finishBy: Int32Array;
  readonly #lastBy: number;
  readonly #limits: Limits;
  /** By node asked about: its position, and its latest start in each run. */
  readonly #asked: ReadonlyMap<number, { readonly position: number; readonly starts: Int32Array }>;

  constructor(
    network: CompiledNetwork,
    { runs, deadlineMinutes, chance, after }: Omit<ChanceLimitOptions, 'seed'>,
    asked: readonly number[],
  ) {
    const { size, nodeAt } = network;
    const deadline = Math.floor(deadlineMinutes * TICKS);
    this.#network = network;
    this.#chance = chance;
    this.#finishBy = Int32Array.from(nodeAt, (index) => deadline - ticksOf(after(index)));
    this.#lastBy = this.#finishBy.reduce((last, by) => Math.max(last, by), deadline);
    this.#limits = limitsOf(size);
    this.#asked = new Map(
      asked.map((index) => [
        index,
        { position: nodeAt.indexOf(index), starts: new Int32Array(runs) },
      ]),
    );
  }

  take(space: RunSpace, offset: number, lanesUsed: number, first: number): void {
    const { start, startBy, finishBy } = this.#limits;
    this.#finishBy.forEach((by, i) => finishBy.fill(by, i * LANES, (i + 1) * LANES));
    startBy.fill(this.#lastBy);
    passBackward(this.#network, space, offset, this.#limits);
    for (const { position, starts } of this.#asked.values()) {
      const at = position * LANES;
      starts.set(start.subarray(at, at + lanesUsed), first);
    }
  }

  found(): ReadonlyMap<number, ChanceLimit> {
    return new Map(
      [...this.#asked].map(([index, { starts }]) => [index, limitOf(starts, this.#chance)]),
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
