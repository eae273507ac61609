import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countFits,
  verdictAt,
  verdictsInWindow,
  verdictsOfPackage,
} from '../../../components/shared/verdicts.js';
import type { FitVerdict } from '../../../src/planner/fit/types.js';

const grid = fc
  .record({ packages: fc.integer({ min: 1, max: 6 }), windows: fc.integer({ min: 1, max: 6 }) })
  .chain(({ packages, windows }) =>
    fc
      .array(fc.boolean(), { minLength: packages * windows, maxLength: packages * windows })
      .map((fits) =>
        fits.map((fit, at): FitVerdict => ({
          package: `P${Math.floor(at / windows)}`,
          window: `W${at % windows}`,
          fits: fit,
          spareMinutes: null,
          reasons: [],
          placements: [],
        })),
      ),
  );

describe('verdicts by their place', () => {
  it('are those that a search through all of them finds', () => {
    fc.assert(
      fc.property(grid, fc.nat(7), fc.nat(7), (fits, row, column) => {
        const [pack, window] = [`P${row}`, `W${column}`];
        expect(verdictsInWindow(fits, window)).toEqual(fits.filter((fit) => fit.window === window));
        expect(verdictsOfPackage(fits, pack)).toEqual(fits.filter((fit) => fit.package === pack));
        expect(verdictAt(fits, { package: pack, window })).toBe(
          fits.find((fit) => fit.package === pack && fit.window === window),
        );
        expect(countFits(fits)).toBe(fits.filter((fit) => fit.fits).length);
      }),
    );
  });

  it('are none of a plan too large to look at every pair', () => {
    expect(verdictsInWindow([], 'W1')).toEqual([]);
    expect(verdictsOfPackage([], 'P1')).toEqual([]);
    expect(countFits([])).toBe(0);
  });
});
