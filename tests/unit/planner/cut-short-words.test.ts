import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import type { Plan } from '../../../src/model/index.js';
import { givenPlan } from '../../../src/planner/given/given-plan.js';
import { allocate } from '../../../src/planner/search/index.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import type { Allocation } from '../../../src/planner/search/types.js';
import { oracle } from '../../helpers/oracle.js';
import { left } from '../../helpers/plain-rules.js';
import { randomPlan } from '../../helpers/random-plan.js';

const cases = Number(process.env['CUT_SHORT_CASES'] ?? 150);

/** Units without a place; a whole piece is one. */
function unitsOut(plan: Plan, { placements }: Allocation): number {
  const all = plan.activities.reduce((sum, activity) => sum + left(activity), 0);
  return all - placements.reduce((sum, { units = 1 }) => sum + units, 0);
}

describe('what is said of a plan whose search had too few steps', () => {
  it(`is no more than the plain search bears out, in ${cases} small plans`, () => {
    let partly = 0;
    let open = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan, step } = randomPlan(seed);
      const found = allocate(plan, { effort: 0.000_01, clock: () => 0 });
      const { certificate, unplaced } = found;
      const best = oracle(plan, objectiveOrder(), step, found.placements);
      const about = { seed, text: certificate.text };
      if (certificate.mostPlaced) {
        partly += Number(unplaced.length > 0);
        expect({ ...about, unplaced: unplaced.length, units: unitsOut(plan, found) }).toEqual({
          ...about,
          unplaced: best.unplaced,
          units: best.unitsOut,
        });
      } else {
        open += 1;
        expect(certificate.text).not.toMatch(/at most|proven best/);
      }
      for (const { name, value, lowerBound, proven } of certificate.objectives) {
        if (name === 'margins') continue;
        if (!certificate.mostPlaced)
          expect({ ...about, lowerBound, proven }).toEqual({
            ...about,
            lowerBound: 0,
            proven: false,
          });
        else
          expect(lowerBound, JSON.stringify({ ...about, name })).toBeLessThanOrEqual(
            best.values[name],
          );
        // What comes after speaks of plans that are as good in this.
        if (value !== best.values[name]) break;
      }
    }
    expect(partly).toBeGreaterThan(0);
    expect(open).toBeGreaterThan(0);
  });

  it('is no distance from the best where more units might be placed', () => {
    const plan = planOfFamily(families['E']!, 5);
    const found = allocate(plan, { effort: 0.01, clock: () => 0 });
    expect(found.unplaced.length).toBeGreaterThan(0);
    expect(found.certificate.mostPlaced).toBe(false);
    expect(found.certificate.text).toBe('best found, not shown that no more can be placed');
    const given = givenPlan(plan, found.placements);
    expect(given.allocation.certificate.text).toBe(
      'as given, not shown that no more can be placed',
    );
  });
});
