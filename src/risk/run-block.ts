import type { CompiledNetwork } from './compile-network.js';
import { fillWords, type RandomState } from './random.js';
import { drawTicks, drawValues, LANES, TICKS, BLOCK } from './sampling.js';

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
  /** When the links of each position would let it start; the same list as `times` when nothing interrupts work. */
  readonly ready: Int32Array;
  /** By slot: 1 where the run's finish hangs on it. */
  readonly marks: Uint8Array;
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
    ready: network.interrupted ? new Int32Array(size * LANES) : times,
    marks: new Uint8Array(2 * size * LANES),
    hitDelay: new Int32Array(network.datedAt.length * LANES),
    finish: new Int32Array(LANES),
    critical: new Float64Array(size),
    criticalRuns: new Float64Array(1),
    criticalEvery: runs > ALL_CRITICAL ? 4 : 1,
    finishes: new Int32Array(runs),
  };
}

/** Draws the lengths for `batches` x `LANES` runs. */
function drawDurations(network: CompiledNetwork, space: RunSpace, batches: number): void {
  const { durations, state, words, values, factor } = space;
  const { base, size, drawAt, drawTable, drawWeight, factorTable } = network;
  const lanes = LANES;
  // Set anew for each block, as events are added to them.
  for (const i of network.keptAt) {
    for (let batch = 0; batch < batches; batch += 1) {
      const at = (batch * size + i) * lanes;
      durations.fill(base[i]!, at, at + lanes);
    }
  }
  for (let batch = 0; factorTable && batch < batches; batch += 1) {
    drawValues(state, words, factorTable, 0, factor, batch * lanes);
    // Tables are in ticks; a factor is a plain number.
    for (let run = batch * lanes; run < (batch + 1) * lanes; run += 1) factor[run]! /= TICKS;
  }
  for (let k = 0; k < drawAt.length; k += 1) {
    const weight = drawWeight[k]!;
    for (let batch = 0; batch < batches; batch += 1) {
      const at = (batch * size + drawAt[k]!) * lanes;
      if (weight === 0) {
        drawTicks(state, drawTable, k, durations, at);
        continue;
      }
      drawValues(state, words, drawTable, k, values, 0);
      for (let lane = 0; lane < lanes; lane += 1) {
        const scale = 1 + weight * (factor[batch * lanes + lane]! - 1);
        durations[at + lane] = (values[lane]! * scale + 0.5) | 0;
      }
    }
  }
}

/** Keeps the delays only where a fresh word falls in the share. */
function keepHits(space: RunSpace, delays: Int32Array, at: number, share: number): void {
  fillWords(space.state, space.words);
  for (let lane = 0; lane < LANES; lane += 1) {
    if (space.words[lane]! >>> 0 >= share) delays[at + lane] = 0;
  }
}

/** Delays of the node events added on, twins given their copies, delays of the dated events drawn. */
function drawEvents(network: CompiledNetwork, space: RunSpace, offset: number): void {
  const { durations, state, hitDelay, finish } = space;
  const { eventAt, eventShare, eventTable, datedShare, datedTable, copyFrom, copyTo } = network;
  for (let k = 0; k < eventAt.length; k += 1) {
    const at = offset + eventAt[k]! * LANES;
    // The finishes are not known yet: their place serves for the delays.
    drawTicks(state, eventTable, k, finish, 0);
    keepHits(space, finish, 0, eventShare[k]!);
    for (let lane = 0; lane < LANES; lane += 1) durations[at + lane]! += finish[lane]!;
  }
  for (let k = 0; k < copyTo.length; k += 1) {
    const from = offset + copyFrom[k]! * LANES;
    durations.copyWithin(offset + copyTo[k]! * LANES, from, from + LANES);
  }
  for (let k = 0; k < datedShare.length; k += 1) {
    drawTicks(state, datedTable, k, hitDelay, k * LANES);
    keepHits(space, hitDelay, k * LANES, datedShare[k]!);
  }
}

/** The greater of two without a branch: which one it is, is chance, and a wrong guess costs more than all the rest. */
function later(a: number, b: number): number {
  const short = (a - b) | 0;
  return (a - (short & (short >> 31))) | 0;
}

/**
 * The moments at which the links of position `i` let it start, written to `ready`, and with `lengths` the finishes too,
 * written to `times`: up to three links are taken in one go, so that a moment is stored once.
 */
function readyTimes(network: CompiledNetwork, space: RunSpace, i: number, offset: number): void {
  const { times, ready, durations } = space;
  const { linkFrom, linkSlot, linkLag, size } = network;
  const lanes = LANES;
  const at = i * lanes;
  const end = (size + i) * lanes;
  const length = offset + at;
  const release = network.release[i]!;
  const first = linkFrom[i]!;
  const last = linkFrom[i + 1]! - 1;
  if (last < first) {
    for (let lane = 0; lane < lanes; lane += 1) {
      ready[at + lane] = release;
      times[end + lane] = (release + durations[length + lane]!) | 0;
    }
    return;
  }
  // A link that is not there is stood in for by the last that is.
  const second = Math.min(first + 1, last);
  const slot = linkSlot[first]! * lanes;
  const lag = linkLag[first]!;
  const slot2 = linkSlot[second]! * lanes;
  const lag2 = linkLag[second]!;
  if (last === first) {
    for (let lane = 0; lane < lanes; lane += 1) {
      const start = later(release, (times[slot + lane]! + lag) | 0);
      ready[at + lane] = start;
      times[end + lane] = (start + durations[length + lane]!) | 0;
    }
    return;
  }
  if (last === second) {
    for (let lane = 0; lane < lanes; lane += 1) {
      const one = (times[slot + lane]! + lag) | 0;
      const other = (times[slot2 + lane]! + lag2) | 0;
      const start = later(release, later(one, other));
      ready[at + lane] = start;
      times[end + lane] = (start + durations[length + lane]!) | 0;
    }
    return;
  }
  const third = first + 2;
  const slot3 = linkSlot[third]! * lanes;
  const lag3 = linkLag[third]!;
  for (let lane = 0; lane < lanes; lane += 1) {
    const one = (times[slot + lane]! + lag) | 0;
    const other = (times[slot2 + lane]! + lag2) | 0;
    const start = later(later(release, (times[slot3 + lane]! + lag3) | 0), later(one, other));
    ready[at + lane] = start;
    times[end + lane] = (start + durations[length + lane]!) | 0;
  }
  for (let link = third + 1; link <= last; link += 1) {
    const from = linkSlot[link]! * lanes;
    const wait = linkLag[link]!;
    for (let lane = 0; lane < lanes; lane += 1) {
      const start = later(ready[at + lane]!, (times[from + lane]! + wait) | 0);
      ready[at + lane] = start;
      times[end + lane] = (start + durations[length + lane]!) | 0;
    }
  }
}

/** Starts position `i` of one run as soon as closed stretches and stoppages let it, from its ready time on. */
function placeAround(
  network: CompiledNetwork,
  space: RunSpace,
  i: number,
  lane: number,
  duration: number,
): void {
  const { times, hitDelay } = space;
  const { closedStart, closedEnd, datedAt, datedStops, size } = network;
  const first = network.closedFrom[i]!;
  const last = network.closedFrom[i + 1]!;
  let start = space.ready[i * LANES + lane]!;
  let length = duration;
  // Each turn but the last passes a closed stretch for good. What takes no time needs no open time.
  for (let moved = duration > 0; moved;) {
    moved = false;
    length = duration;
    for (let k = 0; k < datedAt.length; k += 1) {
      const delay = hitDelay[k * LANES + lane]!;
      if (delay === 0 || !datedStops[k * size + i]) continue;
      const at = datedAt[k]!;
      if (start >= at) start = Math.max(start, at + delay);
      else if (start + length > at) length += delay;
    }
    for (let k = first; k < last; k += 1) {
      if (start < closedEnd[k]! && start + length > closedStart[k]!) {
        start = closedEnd[k]!;
        moved = true;
      }
    }
  }
  times[i * LANES + lane] = start;
  times[(size + i) * LANES + lane] = start + length;
}

/** The earliest times of each run, and the finish of its last node. */
function passForward(network: CompiledNetwork, space: RunSpace, offset: number): void {
  const { times, durations, finish } = space;
  const { size, interrupted, isLast } = network;
  const lanes = LANES;
  finish.fill(0);
  for (let i = 0; i < size; i += 1) {
    readyTimes(network, space, i, offset);
    const end = (size + i) * lanes;
    if (interrupted) {
      const length = offset + i * lanes;
      for (let lane = 0; lane < lanes; lane += 1) {
        placeAround(network, space, i, lane, durations[length + lane]!);
      }
    }
    if (!isLast[i]) continue;
    for (let lane = 0; lane < lanes; lane += 1) {
      finish[lane] = later(finish[lane]!, times[end + lane]!);
    }
  }
}

/** Walks back from the finish over the links that decided it, and counts each node whose length mattered. */
function countCritical(network: CompiledNetwork, space: RunSpace, lanesUsed: number): void {
  const { times, ready, marks, critical, finish } = space;
  const { size, isLast, linkFrom, linkSlot, linkLag } = network;
  const lanes = LANES;
  for (let i = size - 1; i >= 0; i -= 1) {
    const start = i * lanes;
    const end = (size + i) * lanes;
    if (isLast[i]) {
      for (let lane = 0; lane < lanes; lane += 1) {
        if (times[end + lane] === finish[lane]) marks[end + lane] = 1;
      }
    }
    let count = 0;
    for (let lane = 0; lane < lanesUsed; lane += 1) count += marks[end + lane]!;
    critical[i]! += count;
    let any = 0;
    for (let lane = 0; lane < lanes; lane += 1) {
      const mark = marks[start + lane]! | marks[end + lane]!;
      marks[start + lane] = mark;
      any |= mark;
    }
    if (any === 0) continue;
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]! * lanes;
      const lag = linkLag[link]!;
      for (let lane = 0; lane < lanes; lane += 1) {
        const gap = (ready[start + lane]! - times[slot + lane]! - lag) | 0;
        // 1 where the gap is 0: no branch, as in readyTimes.
        marks[slot + lane]! |= marks[start + lane]! & (((gap | -gap) >>> 31) ^ 1);
      }
    }
  }
  marks.fill(0);
}

/** Does `runs` runs, at most `BLOCK`, the first being run number `from`. */
export function runBlock(
  network: CompiledNetwork,
  space: RunSpace,
  from: number,
  runs: number,
): void {
  const batches = Math.ceil(runs / LANES);
  drawDurations(network, space, batches);
  for (let batch = 0; batch < batches; batch += 1) {
    const offset = batch * network.size * LANES;
    const first = batch * LANES;
    const lanesUsed = Math.min(LANES, runs - first);
    drawEvents(network, space, offset);
    passForward(network, space, offset);
    if (((from + first) / LANES) % space.criticalEvery === 0) {
      countCritical(network, space, lanesUsed);
      space.criticalRuns[0]! += lanesUsed;
    }
    for (let lane = 0; lane < lanesUsed; lane += 1) {
      space.finishes[from + first + lane] = space.finish[lane]!;
    }
  }
}
