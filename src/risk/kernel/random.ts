/**
 * Four 32-bit words: the whole state of the generator, so that a simulation can stop and carry on.
 * @see xoshiro128** 1.1 by D. Blackman and S. Vigna (public domain), prng.di.unimi.it
 */
export type RandomState = Int32Array;

/**
 * A generator's state spread from one number. Equal seeds give equal states on every engine: integer operations only.
 *
 * @throws {RangeError} When `seed` is not a safe integer.
 */
export function randomState(seed: number): RandomState {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed ${seed} is not a whole number`);
  const high = Math.floor(seed / 4294967296) | 0;
  // Scrambled with fixed words first, so that small seeds (1, 2, 3 …) give states that are far apart.
  let weyl = (seed | 0) ^ Math.imul(high, 0x85ebca6b);
  const state = new Int32Array(4);
  for (let word = 0; word < 4; word += 1) {
    weyl = (weyl + 0x9e3779b9) | 0;
    let z = weyl;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    state[word] = z ^ (z >>> 15);
  }
  // The one state the generator cannot leave.
  if (state.every((word) => word === 0)) state[0] = 1;
  return state;
}

/** The next 32 random bits as a whole number 0 … 4294967295; moves `state` on. */
export function nextWord(state: RandomState): number {
  const a = state[0]!;
  const b = state[1]!;
  const c = state[2]! ^ a;
  const d = state[3]! ^ b;
  const five = Math.imul(b, 5);
  const word = Math.imul((five << 7) | (five >>> 25), 9);
  state[1] = b ^ c;
  state[0] = a ^ d;
  state[2] = c ^ (b << 9);
  state[3] = (d << 11) | (d >>> 21);
  return word >>> 0;
}

/** Fills `words` with the next words of the generator, as signed 32-bit numbers: many at once is twice as fast. */
export function fillWords(state: RandomState, words: Int32Array): void {
  let a = state[0]!;
  let b = state[1]!;
  let c = state[2]!;
  let d = state[3]!;
  for (let k = 0; k < words.length; k += 1) {
    const five = Math.imul(b, 5);
    words[k] = Math.imul((five << 7) | (five >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
  }
  state[0] = a;
  state[1] = b;
  state[2] = c;
  state[3] = d;
}
