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
  readonly #chance: number;
  readonly #latest: LatestStarts;
  readonly #asked: readonly { readonly index: number; readonly position: number }[];
  /** By position whose starts are worked out: those of each run. */
  readonly #starts = new Map<number, Int32Array>();
  /** The latest starts of the batch that was taken last, where nothing but the deadline is kept to. */
  readonly ofDeadline: LatestStarts | undefined;

  constructor(
    network: CompiledNetwork,
    { runs, deadlineMinutes, chance, after }: Omit<ChanceLimitOptions, 'seed'>,
    asked: readonly number[],
  ) {
    const { nodeAt } = network;
    const deadline = Math.floor(deadlineMinutes * TICKS);
    const finishBy = Int32Array.from(nodeAt, (index) => deadline - ticksOf(after(index)));
    const startBy = finishBy.reduce((last, by) => Math.max(last, by), deadline);
    this.#chance = chance;
    this.#latest = new LatestStarts(network, { startBy, finishBy });
    this.#asked = asked.map((index) => ({ index, position: nodeAt.indexOf(index) }));
    for (const { position } of this.#asked)
      this.#starts.set(this.#latest.of(position).position, new Int32Array(runs));
    if (finishBy.every((by) => by === deadline)) this.ofDeadline = this.#latest;
  }

  take(space: RunSpace, offset: number, lanesUsed: number, first: number): void {
    this.#latest.pass(space, offset);
    for (const [position, starts] of this.#starts) {
      const at = position * LANES;
      starts.set(this.#latest.starts.subarray(at, at + lanesUsed), first);
    }
  }

  found(): ReadonlyMap<number, ChanceLimit> {
    const limits = new Map(
      [...this.#starts].map(([position, starts]) => [position, limitOf(starts, this.#chance)]),
    );
    return new Map(
      this.#asked.map(({ index, position }) => {
        const standing = this.#latest.of(position);
        const { start, errorMinutes } = limits.get(standing.position)!;
        return [index, { start: start - standing.before / TICKS, errorMinutes }];
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
