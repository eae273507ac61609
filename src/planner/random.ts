/** A seeded stream of whole numbers: the same on every engine, since it uses 32-bit integer steps only. */
export interface Random {
  /** A whole number in 0 .. 2^32 - 1. */
  next(): number;
  /** A whole number in 0 .. `bound` - 1. */
  below(bound: number): number;
}

/** A mulberry32 stream; `seed` is taken modulo 2^32. */
export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  function next(): number {
    state = (state + 0x6d2b79f5) >>> 0;
    let x = Math.imul(state ^ (state >>> 15), state | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return (x ^ (x >>> 14)) >>> 0;
  }
  return { next, below: (bound) => Math.floor((next() / 0x100000000) * bound) };
}
