import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fnv1a64, planId } from '../../../src/planner/plan-id.js';
import type { Placement } from '../../../src/model/index.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The same hash in whole numbers without a limit, as its authors write it down. */
function plainly(all: Uint8Array): string {
  let hash = 0xcbf29ce484222325n;
  for (const byte of all) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
  return hash.toString(16).padStart(16, '0');
}

describe('the id of a plan', () => {
  // Test values that the authors of FNV publish with it (isthe.com/chongo/tech/comp/fnv); from memory.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('hashes %j as published', (text, hash) => {
    expect(fnv1a64(bytes(text))).toBe(hash);
  });

  it('hashes any bytes as whole numbers without a limit do', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (all) => {
        expect(fnv1a64(all)).toBe(plainly(all));
      }),
    );
  });

  const first: Placement = { activity: 'A20', window: 'N3', from: 0, to: 3_600_000 };
  const second: Placement = { activity: 'A30', window: null, from: 60_000, to: 120_000, units: 2 };

  it('hangs on no order', () => {
    expect(planId([first, second])).toBe(planId([second, first]));
  });

  it.each([
    ['activity', { ...first, activity: 'A21' }],
    ['window', { ...first, window: null }],
    ['start', { ...first, from: 60_000 }],
    ['end', { ...first, to: 3_660_000 }],
    ['units', { ...first, units: 1 }],
  ])('is another one where the %s is', (_, changed) => {
    expect(planId([changed, second])).not.toBe(planId([first, second]));
  });
});
