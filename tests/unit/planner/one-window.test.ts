import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/planner/random.js';
import { allocate, type Objective } from '../../../src/planner/search/index.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import type { Plan } from '../../../src/model/index.js';
import { verify } from '../../../src/verify/index.js';
import { oracle } from '../../helpers/oracle.js';
import { activity, plan, resource, rules, window } from '../../helpers/plan-builders.js';

const cases = Number(process.env['ONE_WINDOW_CASES'] ?? 60);
const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];
const step = 10;

/** Whole work of one closure: some needs an isolation, some may begin late or has a date, links with gaps. */
function closure(seed: number): Plan {
  const random = createRandom(seed);
  const chance = (percent: number): boolean => random.below(100) < percent;
  const minutes = (low: number, high: number): number =>
    step * (low + random.below(high - low + 1));
  const n = 3 + random.below(3);
  const isolated = chance(60) ? ['S1'] : [];
  return plan({
    windows: [window('P1', 0, minutes(14, 22), { isolation: ['S1'] })],
    activities: Array.from({ length: n }, (_, i) => {
      const after = Array.from({ length: i }, (_, j) => j)
        .filter(() => chance(25))
        .map(
          (j) =>
            `${chance(20) ? 'start of ' : ''}A${j + 1}${chance(30) ? ` + ${minutes(1, 5)}` : ''}`,
        );
      return activity(`A${i + 1}`, minutes(1, 4), {
        package: `W${1 + (i % 2)}`,
        after,
        isolation: chance(40) ? isolated : [],
        resources: {
          ...(chance(50) && { crane: 1 }),
          ...(chance(60) && { gang: 1 + random.below(2) }),
        },
        ...(chance(20) && { notBefore: minutes(1, 8) }),
        ...(chance(35) && { keyDate: minutes(5, 18) }),
        ...(chance(15) && { occupies: 'alone' as const }),
      });
    }),
    resources: [
      resource('crane', [{ capacity: 1 }]),
      resource('gang', [
        { capacity: 2 },
        ...(chance(20) ? [{ capacity: 1, from: minutes(2, 6) }] : []),
      ]),
    ],
    rules: {
      ...rules({ leadOut: step, margin: step }),
      leadIn: [{ step: 'Isolate', minutes: 2 * step, when: 'isolation' as const }],
    },
  });
}

describe('work of one window', () => {
  it(`comes to the best values, and proves them, in ${cases} random closures`, () => {
    let late = 0;
    let out = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const document = closure(seed);
      const first = firsts[seed % firsts.length];
      const found = allocate(document, { ...(first && { first }), clock: () => 0 });
      expect({ seed, faults: verify(document, found) }).toEqual({ seed, faults: [] });
      const best = oracle(document, objectiveOrder(first), step, found.placements);
      const told = found.certificate.objectives.filter((each) => each.name !== 'margins');
      expect({
        seed,
        unplaced: found.unplaced.length,
        values: Object.fromEntries(told.map((each) => [each.name, each.value])),
        proven: told.every((each) => each.proven),
      }).toEqual({ seed, unplaced: best.unplaced, values: best.values, proven: true });
      late += Number(best.values['key-dates'] > 0);
      out += Number(best.unplaced > 0);
    }
    expect(late).toBeGreaterThan(cases / 20);
    expect(out).toBeLessThan(cases / 2);
  });
});
