import { compileNetwork } from './compile-network.js';
import type { RiskNetwork } from './network.js';
import { LATE, limitsOf, passBackward } from './pass-backward.js';
import { randomState } from './random.js';
import { valuesAt } from './ranks.js';
import { eachBatch, runSpace } from './run-block.js';
import { LANES, TICKS, ticksOf } from './sampling.js';

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
  { runs, seed, deadlineMinutes, chance, after }: ChanceLimitOptions,
  asked: readonly number[],
): ReadonlyMap<number, ChanceLimit> {
  const compiled = compileNetwork(network);
  const { size, nodeAt } = compiled;
  const positionOf = new Int32Array(size);
  nodeAt.forEach((index, position) => (positionOf[index] = position));
  const space = runSpace(compiled, randomState(seed), 1);
  const deadline = Math.floor(deadlineMinutes * TICKS);
  const finishBy = Int32Array.from(nodeAt, (index) => deadline - ticksOf(after(index)));
  const found = asked.map(() => new Int32Array(runs));
  const limits = limitsOf(size);
  eachBatch(compiled, space, runs, (offset, lanesUsed, first) => {
    finishBy.forEach((by, i) => limits.finishBy.fill(by, i * LANES, (i + 1) * LANES));
    limits.startBy.fill(LATE);
    passBackward(compiled, space, offset, limits);
    asked.forEach((index, k) => {
      const at = positionOf[index]! * LANES;
      found[k]!.set(limits.start.subarray(at, at + lanesUsed), first);
    });
  });
  return new Map(asked.map((index, k) => [index, limitOf(found[k]!, chance)]));
}

function limitOf(starts: Int32Array, chance: number): ChanceLimit {
  const runs = starts.length;
  // So many of the runs allow this start or a later one.
  const rank = runs - Math.ceil(chance * runs);
  const spread = Math.sqrt(runs * chance * (1 - chance));
  const [low, own, high] = valuesAt(
    starts,
    [rank - spread, rank, rank + spread].map((one) =>
      Math.min(runs - 1, Math.max(0, Math.round(one))),
    ),
  ) as [number, number, number];
  return { start: own / TICKS, errorMinutes: (high / TICKS - low / TICKS) / 2 };
}
