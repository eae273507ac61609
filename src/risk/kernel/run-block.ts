import type { CompiledNetwork } from './compile-network.js';
import { passForward } from './pass-forward.js';
import { fillWords } from './random.js';
import type { RunSpace } from './run-space.js';
import { BLOCK, drawTicks, drawValues, LANES, TICKS } from './sampling.js';

export { runSpace } from './run-space.js';

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

/** Told of each batch once its lengths are drawn: where they begin, how many lanes are runs, the number of the first. */
export type BatchUse = (offset: number, lanesUsed: number, first: number) => void;

/**
 * Draws so many runs, `LANES` side by side, in the words that `simulate` takes with the same seed.
 */
export function eachBatch(
  network: CompiledNetwork,
  space: RunSpace,
  runs: number,
  use: BatchUse,
): void {
  for (let from = 0; from < runs; from += BLOCK) {
    const inBlock = Math.min(BLOCK, runs - from);
    const batches = Math.ceil(inBlock / LANES);
    drawDurations(network, space, batches);
    for (let batch = 0; batch < batches; batch += 1) {
      const offset = batch * network.size * LANES;
      drawEvents(network, space, offset);
      use(offset, Math.min(LANES, inBlock - batch * LANES), from + batch * LANES);
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
  alongside?: BatchUse,
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
    alongside?.(offset, lanesUsed, from + first);
  }
}
