import { compileNetwork, type CompiledNetwork } from './compile-network.js';
import type { WhatIf } from './held-case.js';
import type { RiskNetwork } from './network.js';
import { randomState } from './random.js';
import { runBlock, type BatchUse } from './run-block.js';
import { runSpace, type RunSpace } from './run-space.js';
import { BLOCK, TICKS } from './sampling.js';

export interface SimulationOptions {
  /** 1 … 10,000,000. */
  readonly runs: number;
  /** Any whole number. Equal seeds give equal bits on every engine. */
  readonly seed: number;
  /** Minutes by which all should be finished. Finishing on the minute is on time. Absent: none is asked about. */
  readonly deadlineMinutes?: number;
}

export interface SimulateOptions extends SimulationOptions {
  /** Asked every few thousand runs; answering true ends the simulation with the runs done so far. */
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (runsDone: number, runs: number) => void;
  /** What else is asked of the same runs, once their lengths are drawn, and all changes that it tries on them. */
  readonly alongside?: Alongside;
  readonly changes?: readonly WhatIf[];
}

/** Made for the network as it is run, before its first run. */
export type Alongside = (network: CompiledNetwork, space: RunSpace) => BatchUse;

/** A share of runs, with the error to be expected of it as an estimate. */
export interface Chance {
  readonly probability: number;
  /** sqrt(p (1 - p) / runs), with p moved off 0 and 1 by one run so that it never reads as certainty. */
  readonly standardError: number;
}

export interface Quantiles {
  readonly p50: number;
  readonly p80: number;
  readonly p90: number;
  readonly p95: number;
}

export interface DeadlineOutlook {
  readonly deadlineMinutes: number;
  readonly onTime: Chance;
  /** Mean of the minutes late, a run on time counting 0. */
  readonly expectedOverrunMinutes: number;
  readonly overrunStandardError: number;
  /** Chance of being more than 1, 2 and 3 hours late. */
  readonly laterThan: readonly ({ readonly minutes: number } & Chance)[];
}

export interface SimulationResult {
  /** Runs done; fewer than asked for when stopped. */
  readonly runs: number;
  readonly seed: number;
  readonly stopped: boolean;
  /** Finish of every run in minutes, ascending. */
  readonly finishMinutes: Float64Array;
  readonly meanMinutes: number;
  readonly meanStandardError: number;
  /** Nearest rank: the smallest finish that at least that share of the runs did not exceed. */
  readonly quantiles: Quantiles;
  readonly deadline: DeadlineOutlook | null;
  /**
   * Share of runs in which the node's length decided the finish, by index in the network's list. Above 16,384 runs one
   * in four is looked at.
   */
  readonly criticality: Float64Array;
}

/** A simulation that goes on when told, so that a worker can hear of a cancellation in between. */
export interface Simulation {
  readonly runsDone: number;
  readonly done: boolean;
  /** Does at least `runs` more (a whole number of blocks), or all that are left. */
  advance(runs: number): void;
  /** @throws {RangeError} Before the first run. */
  result(): SimulationResult;
}

/** The value at the nearest rank: the ceil(p n)-th smallest. `sorted` is ascending and not empty. */
export function nearestRank(sorted: Float64Array, p: number): number {
  const rank = Math.ceil(p * sorted.length);
  return sorted[Math.min(sorted.length, Math.max(1, rank)) - 1]!;
}

export function chanceOf(hits: number, runs: number): Chance {
  const careful = Math.min(Math.max(hits, 1), Math.max(runs - 1, 1)) / runs;
  return {
    probability: hits / runs,
    standardError: Math.sqrt((careful * (1 - Math.min(careful, 1))) / runs),
  };
}

/** How many values of an ascending list are at most `limit`. */
export function countUpTo(sorted: Float64Array, limit: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What a set of finishes says of a deadline. `sorted` is ascending and not empty. */
export function outlookOf(sorted: Float64Array, deadlineMinutes: number): DeadlineOutlook {
  const runs = sorted.length;
  const onTime = countUpTo(sorted, deadlineMinutes);
  let sum = 0;
  let squares = 0;
  for (let k = onTime; k < runs; k += 1) {
    const late = sorted[k]! - deadlineMinutes;
    sum += late;
    squares += late * late;
  }
  const mean = sum / runs;
  return {
    deadlineMinutes,
    onTime: chanceOf(onTime, runs),
    expectedOverrunMinutes: mean,
    overrunStandardError: Math.sqrt(Math.max(0, squares / runs - mean * mean) / runs),
    laterThan: [60, 120, 180].map((minutes) => ({
      minutes,
      ...chanceOf(runs - countUpTo(sorted, deadlineMinutes + minutes), runs),
    })),
  };
}

// Loops over all runs are functions of their own: so little is optimized quickly, all of a result is not.

function inMinutes(ticks: Int32Array): Float64Array {
  const minutes = new Float64Array(ticks.length);
  for (let run = 0; run < ticks.length; run += 1) minutes[run] = ticks[run]! / TICKS;
  return minutes;
}

/** The mean, and the sum of the squares of what each is off it. */
function spreadOf(finishes: Float64Array): { mean: number; squares: number } {
  let sum = 0;
  for (let run = 0; run < finishes.length; run += 1) sum += finishes[run]!;
  const mean = sum / finishes.length;
  let squares = 0;
  for (let run = 0; run < finishes.length; run += 1)
    squares += (finishes[run]! - mean) * (finishes[run]! - mean);
  return { mean, squares };
}

/** @throws {RangeError} When the options or the network make no sense. */
export function beginSimulation(
  network: RiskNetwork,
  options: SimulationOptions & Pick<SimulateOptions, 'alongside' | 'changes'>,
): Simulation {
  const compiled = compileNetwork(network, options.changes);
  const { runs, seed, deadlineMinutes } = options;
  if (!(Number.isInteger(runs) && runs >= 1 && runs <= 10_000_000))
    throw new RangeError(`${runs} runs: give a whole number from 1 to 10,000,000`);
  const space = runSpace(compiled, randomState(seed), runs);
  const alongside = options.alongside?.(compiled, space);
  let runsDone = 0;
  return {
    get runsDone() {
      return runsDone;
    },
    get done() {
      return runsDone === runs;
    },
    advance(more) {
      const to = Math.min(runs, runsDone + more);
      while (runsDone < to) {
        const block = Math.min(BLOCK, runs - runsDone);
        runBlock(compiled, space, runsDone, block, alongside);
        runsDone += block;
      }
    },
    result() {
      if (runsDone === 0) throw new RangeError('no run done yet');
      const sorted = inMinutes(space.finishes.slice(0, runsDone).sort());
      const { mean, squares } = spreadOf(sorted);
      const criticality = new Float64Array(compiled.size);
      compiled.nodeAt.forEach(
        (index, position) =>
          (criticality[index] = space.critical[position]! / space.criticalRuns[0]!),
      );
      return {
        runs: runsDone,
        seed,
        stopped: runsDone < runs,
        finishMinutes: sorted,
        meanMinutes: mean,
        meanStandardError: Math.sqrt(squares / runsDone / runsDone),
        quantiles: {
          p50: nearestRank(sorted, 0.5),
          p80: nearestRank(sorted, 0.8),
          p90: nearestRank(sorted, 0.9),
          p95: nearestRank(sorted, 0.95),
        },
        deadline: deadlineMinutes === undefined ? null : outlookOf(sorted, deadlineMinutes),
        criticality,
      };
    },
  };
}

const CHUNK = 4096;

function runToEnd(simulation: Simulation, options: SimulateOptions): SimulationResult {
  while (!simulation.done) {
    simulation.advance(CHUNK);
    options.onProgress?.(simulation.runsDone, options.runs);
    if (!simulation.done && options.shouldStop?.()) break;
  }
  return simulation.result();
}

/**
 * Runs the network many times with lengths drawn at random, and says when it finishes.
 *
 * Some 11 to 20 ns a node and run, by the machine and what else it does (`bench/risk` measures it). @throws {RangeError} When the options or the network make no sense.
 */
export function simulate(network: RiskNetwork, options: SimulateOptions): SimulationResult {
  return runToEnd(beginSimulation(network, options), options);
}
