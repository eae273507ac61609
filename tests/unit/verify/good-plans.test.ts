// No false alarm: plans that the search makes of random documents, in zones whose clocks change at different hours, over the
// nights on which they do. `VERIFY_CASES` sets how many of each kind.
import { describe, expect, it } from 'vitest';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { randomRichPlan } from './random-rich-plan.js';

const cases = Number(process.env['VERIFY_CASES'] ?? 260);

describe.each([
  ['plans', randomPlan],
  ['plans with what opens the line and what makes it good', randomLinePlan],
  ['plans of every rule over the nights of clock changes', randomRichPlan],
])('the check of random %s', (_, random) => {
  it(`finds nothing wrong with ${cases} that the search made`, () => {
    let placed = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan } = random(seed);
      const found = allocate(plan, { clock: () => 0 });
      placed += found.placements.length;
      expect({ seed, faults: verify(plan, found) }).toEqual({ seed, faults: [] });
    }
    expect(placed).toBeGreaterThan(cases / 2);
  });
});
