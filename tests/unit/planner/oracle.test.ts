import { describe, expect, it } from 'vitest';
import { allocate, type Objective } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import { seeds } from '../../helpers/cases.js';
import { oracle } from '../../helpers/oracle.js';
import { lineFaults } from '../../helpers/line-check.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { processorMs } from '../../helpers/processor-clock.js';

const cases = Number(process.env['ORACLE_CASES'] ?? 100);
const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];

const kinds = [
  { name: 'small plans', planOf: randomPlan },
  { name: 'small plans with line state and work that goes on alone', planOf: randomLinePlan },
];

describe.each(kinds)('allocate against the plain search: $name', ({ planOf }) => {
  it(`comes to the same values in ${cases} of them, proves them and breaks no constraint`, () => {
    let proven = 0;
    for (const seed of seeds(cases)) {
      const { plan, step } = planOf(seed);
      const first = firsts[seed % firsts.length];
      const found = allocate(plan, {
        ...(first ? { first } : {}),
        seconds: 5,
        clock: processorMs,
      });
      const best = oracle(plan, objectiveOrder(first), step, found.placements);
      const values = Object.fromEntries(
        found.certificate.objectives
          .filter((each) => each.name !== 'margins')
          .map((each) => [each.name, each.value]),
      );
      expect({ seed, faults: verify(plan, { placements: found.placements }) }).toEqual({
        seed,
        faults: [],
      });
      expect({ seed, open: lineFaults(plan, found.placements) }).toEqual({ seed, open: [] });
      expect({ seed, unplaced: found.unplaced.length, values }).toEqual({
        seed,
        unplaced: best.unplaced,
        values: best.values,
      });
      for (const each of found.certificate.objectives)
        expect(each.lowerBound).toBeLessThanOrEqual(each.value);
      // Where nothing is placed nothing is proven.
      const { objectives, text } = found.certificate;
      if (text.startsWith('nothing') || objectives.every((each) => each.proven)) proven += 1;
    }
    expect(proven).toBe(seeds(cases).length);
  });
});
