// No false alarm: plans that the search makes of random documents, in zones whose clocks change at different hours, over the
// nights on which they do. `VERIFY_CASES` sets how many of each kind.
import { describe, expect, it } from 'vitest';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { randomRichPlan } from './random-rich-plan.js';

const cases = Number(process.env['VERIFY_CASES'] ?? 260);

it('takes a piece of no time to be in the way of nothing', () => {
  // The float of A1, which has its place alone, passes over A2.
  const document = plan({
    windows: [window('P1', 0, 600)],
    activities: [
      activity('A1', 60, { occupies: 'alone', lines: ['Up'] }),
      activity('A2', 0, { occupies: 'shared', lines: ['Up'], notBefore: 570 }),
    ],
  });
  const found = allocate(document, { clock: () => 0 });
  expect(found.floats).toMatchObject([{ freeFloatMinutes: 540 }, {}]);
  expect(verify(document, found)).toEqual([]);
});

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
