import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { valuesAt } from '../../../src/risk/kernel/ranks.js';

describe('values by their rank', () => {
  it('are those that sorting puts there, with many alike too', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.integer({ min: -3, max: 3 }), fc.integer()), { minLength: 1 }),
        fc.array(fc.nat(), { minLength: 1, maxLength: 4 }),
        (list, places) => {
          const ranks = places.map((place) => place % list.length).sort((a, b) => a - b);
          const sorted = Int32Array.from(list).sort();
          expect(valuesAt(Int32Array.from(list), ranks)).toEqual(ranks.map((rank) => sorted[rank]));
        },
      ),
      { numRuns: 500 },
    );
  });
});
