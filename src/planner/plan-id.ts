import type { Placement } from '../model/index.js';

/**
 * What a plan of work is known by: 16 hexadecimal digits that hang on its placements and nothing else, in any order.
 *
 * Two plans with one id are the same plan, but for a chance of 1 in 18 million million million: it tells plans apart,
 * and is no seal against forging.
 * @see FNV-1a, 64 bits (Fowler, Noll and Vo).
 */
export function planId(placements: readonly Placement[]): string {
  const lines = placements.map((placement) =>
    JSON.stringify([
      placement.activity,
      placement.window,
      placement.from,
      placement.to,
      placement.units ?? null,
    ]),
  );
  return fnv1a64(new TextEncoder().encode(lines.sort().join('\n')));
}

/** The hash of some bytes, in two halves of 32 bits: the prime is 2^40 + 435. */
export function fnv1a64(bytes: Uint8Array): string {
  let high = 0xcbf29ce4;
  let low = 0x84222325;
  for (const byte of bytes) {
    low = (low ^ byte) >>> 0;
    const product = low * 435;
    high = (Math.imul(high, 435) + Math.floor(product / 2 ** 32) + (low << 8)) >>> 0;
    low = product >>> 0;
  }
  return [high, low].map((half) => half.toString(16).padStart(8, '0')).join('');
}
