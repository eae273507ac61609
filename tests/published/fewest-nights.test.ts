// The fewest equal nights for one gang: filling bins, with what follows in the same bin or a later one. Held against every
// assignment of small cases, by a search over sets of work that shares no code with the planner.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocate } from '../../src/planner/search/index.js';
import { verify } from '../../src/verify/index.js';
import { activity, plan, resource, window } from '../helpers/plan-builders.js';

/** By sets of work that is done, the fewest nights still needed. */
function fewestNights(
  minutes: readonly number[],
  night: number,
  after: readonly (readonly [before: number, then: number])[],
): number {
  const n = minutes.length;
  const known = new Map<number, number>();
  const needs = (done: number): number => {
    if (done === (1 << n) - 1) return 0;
    const told = known.get(done);
    if (told !== undefined) return told;
    let best = Infinity;
    for (let load = 1; load < 1 << n; load += 1) {
      if ((load & done) !== 0) continue;
      const over = done | load;
      const sum = minutes.reduce((total, each, i) => total + ((load >> i) & 1 ? each : 0), 0);
      if (sum > night) continue;
      if (after.some(([a, b]) => (over >> b) & 1 && !((over >> a) & 1))) continue;
      best = Math.min(best, 1 + needs(over));
    }
    known.set(done, best);
    return best;
  };
  return needs(0);
}

const small = fc.integer({ min: 1, max: 7 }).chain((n) =>
  fc.record({
    night: fc.integer({ min: 6, max: 14 }),
    minutes: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: n, maxLength: n }),
    arcs: fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 2 * n }),
  }),
);

describe('the fewest equal nights for one gang', () => {
  it('is found and proven in every small case', () => {
    fc.assert(
      fc.property(small, ({ night, minutes, arcs }) => {
        const after = arcs
          .filter(([a, b]) => a !== b)
          .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
        const document = plan({
          windows: minutes.map((_, i) => window(`P${i + 1}`, 60 * i, night)),
          activities: minutes.map((each, i) =>
            activity(`A${i + 1}`, each, {
              after: [...new Set(after.filter(([, b]) => b === i).map(([a]) => `A${a + 1}`))],
              resources: { gang: 1 },
            }),
          ),
          resources: [resource('gang', [{ capacity: 1 }])],
        });
        const found = allocate(document, { first: 'fewest-windows', clock: () => 0 });
        expect(verify(document, found)).toEqual([]);
        expect(found.certificate).toMatchObject({
          objective: fewestNights(minutes, night, after),
          proven: true,
        });
      }),
      { numRuns: 60 },
    );
  });
});
