import type { CompiledNetwork } from './compile-network.js';
import type { RandomState } from './random.js';
import { BLOCK, LANES, WORD } from './sampling.js';

/** Above this many runs a quarter of them is enough to say how often each node was critical: to half a percent. */
const ALL_CRITICAL = 16_384;

/**
 * What the runs of one simulation write into. Allocated once. A list by position or slot holds `LANES` values for
 * each: the runs done side by side.
 */
export interface RunSpace {
  readonly state: RandomState;
  readonly words: Int32Array;
  /** The common factor of each run of the block. */
  readonly factor: Float64Array;
  readonly values: Float64Array;
  /** For each batch of the block, each position, each lane. */
  readonly durations: Int32Array;
  /** Start of position i at slot i, finish at slot size + i. */
  readonly times: Int32Array;
  /** When the links of each position that something may interrupt would let it start. */
  readonly ready: Int32Array;
  /** By slot a bit for each run, set where its finish hangs on it: two words of 32 runs. */
  readonly marks: Int32Array;
  /** Delay of each dated event, 0 where it does not happen. */
  readonly hitDelay: Int32Array;
  readonly finish: Int32Array;
  /** Runs in which the node's length decided the finish, by position (one value each), of the runs looked at. */
  readonly critical: Float64Array;
  readonly criticalRuns: Float64Array;
  /** One batch in how many is looked at. */
  readonly criticalEvery: number;
  /** Finish of each run in ticks, in the order run. */
  readonly finishes: Int32Array;
}

export function runSpace(network: CompiledNetwork, state: RandomState, runs: number): RunSpace {
  const { size } = network;
  const times = new Int32Array(2 * size * LANES);
  return {
    state,
    words: new Int32Array(LANES),
    factor: new Float64Array(BLOCK),
    values: new Float64Array(LANES),
    durations: new Int32Array(size * BLOCK),
    times,
    ready: network.forward.interrupted ? new Int32Array(size * LANES) : times,
    marks: new Int32Array((2 * size * LANES) / WORD),
    hitDelay: new Int32Array(network.datedAt.length * LANES),
    finish: new Int32Array(LANES),
    critical: new Float64Array(size),
    criticalRuns: new Float64Array(1),
    criticalEvery: runs > ALL_CRITICAL ? 4 : 1,
    finishes: new Int32Array(runs),
  };
}
