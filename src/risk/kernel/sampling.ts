import { TABLE_CELLS } from './distribution.js';
import { fillWords, type RandomState } from './random.js';

/**
 * Ticks in a minute. Simulated times are whole ticks in 32 bits: additions are exact, the greatest of two needs no
 * branch, and every engine agrees.
 */
export const TICKS = 64;

/** @throws {RangeError} Beyond some sixty years of minutes, or for what is not a number. */
export function ticksOf(minutes: number): number {
  const ticks = Math.round(minutes * TICKS);
  if (!(Math.abs(ticks) < 2_000_000_000))
    throw new RangeError(`${minutes} minutes is out of range`);
  return ticks;
}

/**
 * Runs done side by side: each step of the work is a short loop over them. Part of the result, as is `BLOCK`: other
 * numbers deal the random words to the runs in another order.
 */
export const LANES = 64;

/** Runs that one word of bits tells of. */
export const WORD = 32;

/** Runs whose lengths are drawn in one go, a node at a time: so one node's table stays in the nearest cache. */
export const BLOCK = 16 * LANES;

/** Numbers in one sampling table: quantiles in ticks. */
export const sampleWidth = TABLE_CELLS + 1;

/** 32 random bits: the upper 10 pick one of 1024 cells, the lower 22 the place inside it. */
const CELL_SHIFT = 22;
const PLACE_MASK = 4194303;
const PLACE_UNIT = 1 / 4194304;

export function inTicks(table: Float64Array): Float64Array {
  return table.map((minutes) => minutes * TICKS);
}

/** The values of table `k` at the words, in ticks not yet rounded, written from `out[at]` on. */
export function drawValues(
  state: RandomState,
  words: Int32Array,
  tables: Float64Array,
  k: number,
  out: Float64Array,
  at: number,
): void {
  fillWords(state, words);
  const row = k * sampleWidth;
  const shift = CELL_SHIFT;
  const mask = PLACE_MASK;
  const unit = PLACE_UNIT;
  for (let lane = 0; lane < words.length; lane += 1) {
    const word = words[lane]!;
    const cell = row + (word >>> shift);
    const below = tables[cell]!;
    out[at + lane] = below + (tables[cell + 1]! - below) * ((word & mask) * unit);
  }
}

/**
 * `LANES` values of table `k`, rounded to ticks and written from `out[at]` on.
 *
 * The generator of `fillWords` is written out once more, its words in locals: a third of a simulation's time goes here.
 */
export function drawTicks(
  state: RandomState,
  tables: Float64Array,
  k: number,
  out: Int32Array,
  at: number,
): void {
  const row = k * sampleWidth;
  const end = at + LANES;
  const shift = CELL_SHIFT;
  const mask = PLACE_MASK;
  const unit = PLACE_UNIT;
  let a = state[0]!;
  let b = state[1]!;
  let c = state[2]!;
  let d = state[3]!;
  for (let lane = at; lane < end; lane += 1) {
    const five = Math.imul(b, 5);
    const word = Math.imul((five << 7) | (five >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    const cell = row + (word >>> shift);
    const below = tables[cell]!;
    out[lane] = (below + (tables[cell + 1]! - below) * ((word & mask) * unit) + 0.5) | 0;
  }
  state[0] = a;
  state[1] = b;
  state[2] = c;
  state[3] = d;
}
