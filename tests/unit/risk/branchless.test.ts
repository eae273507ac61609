import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { later, meets, sooner } from '../../../src/risk/kernel/branchless.js';

const ticks = fc.integer({ min: -70_000_000, max: 2_000_000_000 });

describe('without a branch', () => {
  it('is the same as with one', () => {
    fc.assert(
      fc.property(ticks, ticks, (a, b) => {
        expect(later(a, b)).toBe(Math.max(a, b));
        expect(sooner(a, b)).toBe(Math.min(a, b));
      }),
    );
  });

  it('says of work whether it meets a stretch, whose ends are no part of each other', () => {
    const near = fc.integer({ min: -20, max: 20 });
    const lengths = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(near, lengths, near, lengths, (start, lasts, from, long) => {
        const to = from + long + 1;
        const met = lasts > 0 && start < to && start + lasts > from;
        expect(meets(start, lasts, from, to)).toBe(met ? -1 : 0);
      }),
      { numRuns: 2000 },
    );
  });
});
