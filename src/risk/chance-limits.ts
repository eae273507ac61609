import { compileNetwork, type CompiledNetwork } from './compile-network.js';
import type { RiskNetwork } from './network.js';
import { randomState } from './random.js';
import { valuesAt } from './ranks.js';
import { drawDurations, drawEvents, runSpace } from './run-block.js';
import type { RunSpace } from './run-space.js';
import { BLOCK, LANES, TICKS, ticksOf } from './sampling.js';

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
  const pass: Pass = {
    start: new Int32Array(size * LANES),
    startBy: new Int32Array(size * LANES),
    finishBy: new Int32Array(size * LANES),
  };
  for (let from = 0; from < runs; from += BLOCK) {
    const inBlock = Math.min(BLOCK, runs - from);
    const batches = Math.ceil(inBlock / LANES);
    drawDurations(compiled, space, batches);
    for (let batch = 0; batch < batches; batch += 1) {
      const offset = batch * size * LANES;
      drawEvents(compiled, space, offset);
      const lanesUsed = Math.min(LANES, inBlock - batch * LANES);
      finishBy.forEach((by, i) => pass.finishBy.fill(by, i * LANES, (i + 1) * LANES));
      pass.startBy.fill(LATE);
      backward(compiled, space, offset, pass);
      asked.forEach((index, k) => {
        const at = positionOf[index]! * LANES;
        found[k]!.set(pass.start.subarray(at, at + lanesUsed), from + batch * LANES);
      });
    }
  }
  return new Map(asked.map((index, k) => [index, limitOf(found[k]!, chance)]));
}

const LATE = 2_000_000_000;

/** By position, a value for each run that is done side by side. */
interface Pass {
  readonly start: Int32Array;
  readonly startBy: Int32Array;
  readonly finishBy: Int32Array;
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

/** Latest starts of all runs side by side, the last position first. */
function backward(network: CompiledNetwork, space: RunSpace, offset: number, pass: Pass): void {
  const { size, linkFrom, linkSlot, linkLag, closedFrom, datedAt } = network;
  const { start, startBy, finishBy } = pass;
  const lanes = LANES;
  for (let i = size - 1; i >= 0; i -= 1) {
    const at = i * lanes;
    if (datedAt.length > 0 || closedFrom[i] !== closedFrom[i + 1])
      startsAround(network, space, i, offset, pass);
    else startsBefore(space.durations, i, offset, pass);
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      const lag = linkLag[link]!;
      const limits = slot < size ? startBy : finishBy;
      const to = (slot < size ? slot : slot - size) * lanes;
      for (let lane = 0; lane < lanes; lane += 1)
        limits[to + lane] = Math.min(limits[to + lane]!, (start[at + lane]! - lag) | 0);
    }
  }
}

/** Latest starts of a position that nothing interrupts. */
function startsBefore(
  durations: Int32Array,
  i: number,
  offset: number,
  { start, startBy, finishBy }: Pass,
): void {
  const at = i * LANES;
  const length = offset + at;
  for (let lane = 0; lane < LANES; lane += 1)
    start[at + lane] = Math.min(
      startBy[at + lane]!,
      (finishBy[at + lane]! - durations[length + lane]!) | 0,
    );
}

/** Latest starts of a position that closed stretches or stoppages may interrupt. */
function startsAround(
  network: CompiledNetwork,
  space: RunSpace,
  i: number,
  offset: number,
  { start, startBy, finishBy }: Pass,
): void {
  for (let lane = 0; lane < LANES; lane += 1) {
    const at = i * LANES + lane;
    const minutes = space.durations[offset + at]!;
    let latest = latestTicks(network, space, i, lane, finishBy[at]!, minutes);
    if (startBy[at]! < latest)
      latest = latestTicks(network, space, i, lane, startBy[at]! + minutes, minutes);
    start[at] = latest;
  }
}

/** The last moment from which position `i` can run its length and be over by `by`, past stoppages and closed stretches. */
function latestTicks(
  { closedFrom, closedStart, closedEnd, datedAt, datedStops, size }: CompiledNetwork,
  { hitDelay }: RunSpace,
  i: number,
  lane: number,
  by: number,
  minutes: number,
): number {
  if (minutes === 0) return by;
  let end = by;
  for (;;) {
    // Stoppages lengthen work under way; none starts or ends inside one.
    let length = minutes;
    for (let k = datedAt.length - 1; k >= 0; k -= 1) {
      const delay = hitDelay[k * LANES + lane]!;
      const at = datedAt[k]!;
      if (delay === 0 || !datedStops[k * size + i] || end <= at || end - length >= at + delay)
        continue;
      if (end < at + delay) end = at;
      else length += delay;
    }
    const start = end - length;
    let moved = false;
    for (let k = closedFrom[i + 1]! - 1; k >= closedFrom[i]! && !moved; k -= 1) {
      if (start >= closedEnd[k]! || end <= closedStart[k]!) continue;
      end = closedStart[k]!;
      moved = true;
    }
    if (!moved) return start;
  }
}
