import type { CompiledNetwork } from './compile-network.js';
import { Works, type ForwardLayout } from './forward-layout.js';
import { passForward } from './pass-forward.js';
import { fillWords } from './random.js';
import type { RunSpace } from './run-space.js';
import { BLOCK, drawTicks, drawValues, LANES, TICKS, WORD } from './sampling.js';

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
  const { marks, critical } = space;
  const { size, isLast, forward } = network;
  const words = LANES / WORD;
  for (let word = 0; word < words; word += 1) {
    const lane = word * WORD;
    const used = lanesUsed - lane >= WORD ? -1 : (1 << Math.max(0, lanesUsed - lane)) - 1;
    for (let i = size - 1; i >= 0; i -= 1) {
      const end = (size + i) * words + word;
      if (isLast[i]) marks[end]! |= lastIn(forward, space, size + i, lane);
      critical[i]! += bitsIn(marks[end]! & used);
      const marked = marks[i * words + word]! | marks[end]!;
      if (marked !== 0) markBefore(network, space, i, word, marked);
    }
  }
  marks.fill(0);
}

/** The runs of a word, from `lane` on, whose finish is that of the slot. */
function lastIn(
  { slotAt, slotLag }: ForwardLayout,
  { times, finish }: RunSpace,
  slot: number,
  lane: number,
): number {
  const from = slotAt[slot]! * LANES + lane;
  const lag = slotLag[slot]!;
  let bits = 0;
  for (let k = 0; k < WORD; k += 1)
    bits |= Number(times[from + k]! + lag === finish[lane + k]) << k;
  return bits;
}

/** Marks what decided the start of position `i` in the runs `marked` of a word. */
function markBefore(
  { linkFrom, linkSlot, linkLag, datedAt, forward }: CompiledNetwork,
  { times, ready, marks }: RunSpace,
  i: number,
  word: number,
  marked: number,
): void {
  const words = LANES / WORD;
  if (forward.works[i] !== Works.all) {
    marks[linkSlot[linkFrom[i]!]! * words + word]! |= marked;
    return;
  }
  const start = i * LANES + word * WORD;
  const { closedFrom, slotAt, slotLag } = forward;
  const readyAt = closedFrom[i] !== closedFrom[i + 1] || datedAt.length > 0 ? ready : times;
  for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
    const slot = linkSlot[link]!;
    const from = slotAt[slot]! * LANES + word * WORD;
    const lag = linkLag[link]! + slotLag[slot]!;
    let bits = 0;
    for (let left = marked; left !== 0; left &= left - 1) {
      const bit = left & -left;
      const lane = 31 - Math.clz32(bit);
      const gap = (readyAt[start + lane]! - times[from + lane]! - lag) | 0;
      // Where the gap is 0: no branch, as in readyTimes.
      bits |= bit & ~((gap | -gap) >> 31);
    }
    marks[slot * words + word]! |= bits;
  }
}

function bitsIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
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
