import { describe, expect, it } from 'vitest';
import { LedgerCache, problemOf, type Problem } from '../../../src/planner/fit/index.js';
import type { Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { fewestHitting } from '../../../src/planner/bounds/hitting.js';
import { createRandom } from '../../../src/planner/random.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import { cappedOf } from '../../../src/planner/search/parts.js';
import { prove } from '../../../src/planner/bounds/prove.js';
import { windowBound } from '../../../src/planner/bounds/window-bound.js';
import { oracle } from '../../helpers/oracle.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { processorMs } from '../../helpers/processor-clock.js';

const cases = Number(process.env['BOUND_CASES'] ?? 200);
const clock = processorMs;
const never = (): boolean => false;
const free = { late: Number.POSITIVE_INFINITY, finish: Number.POSITIVE_INFINITY };

function problemFor(document: Plan): Problem {
  const windows = document.windows.filter((item) => item.status !== 'withdrawn');
  return problemOf(
    document,
    { windows, activities: document.activities },
    new LedgerCache(document),
  );
}

describe('fewestHitting', () => {
  it('comes to what trying every choice comes to', () => {
    const random = createRandom(3);
    for (let turn = 0; turn < 200; turn += 1) {
      const members = 3 + random.below(6);
      const sets = Array.from({ length: random.below(8) }, () => {
        const set = Array.from({ length: members }, (_, i) => i).filter(
          () => random.below(3) === 0,
        );
        return set.length > 0 ? set : [random.below(members)];
      });
      let fewest = members;
      for (let mask = 0; mask < 1 << members; mask += 1)
        if (sets.every((set) => set.some((value) => mask & (1 << value)))) {
          let count = 0;
          for (let i = 0; i < members; i += 1) if (mask & (1 << i)) count += 1;
          fewest = Math.min(fewest, count);
        }
      const { chosen, atLeast } = fewestHitting(sets);
      expect({ sets, atLeast, count: chosen.length }).toEqual({
        sets,
        atLeast: fewest,
        count: fewest,
      });
      expect(sets.every((set) => set.some((value) => chosen.includes(value)))).toBe(true);
    }
  });
});

describe('windowBound', () => {
  it('sees that dates, lengths and curing keep work apart', () => {
    const document = plan({
      windows: Array.from({ length: 10 }, (_, i) => window(`P${i + 1}`, i * 1440, 120)),
      activities: [
        // One window before each date, and the whole of it.
        activity('A1', 100, { keyDate: 2 * 1440, package: 'W1' }),
        activity('A2', 100, { notBefore: 2 * 1440, keyDate: 4 * 1440, package: 'W2' }),
        activity('A3', 100, { notBefore: 4 * 1440, keyDate: 6 * 1440, package: 'W3' }),
        activity('A4', 30, { after: ['A3 + 2880'], package: 'W4' }),
      ],
    });
    const found = allocate(document, { seconds: 2, clock });
    expect(found.certificate.objectives.at(-1)).toMatchObject({ value: 4, lowerBound: 4 });
    const caps = { late: 0, finish: Number.POSITIVE_INFINITY };
    const options = { caps, enough: 10, stop: never };
    expect(windowBound(problemFor(document), options).atLeast).toBe(4);
    // Without dates A1, A2 and A3 may go side by side; what waits for curing needs another window still.
    expect(windowBound(problemFor(document), { ...options, caps: free }).atLeast).toBe(2);
  });

  it(`is never above the fewest windows, nor a proof against what can be, in ${cases} random plans`, () => {
    let met = 0;
    let looked = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed + 30_000);
      const first = seed % 2 === 0 ? 'fewest-windows' : undefined;
      const found = allocate(document, { ...(first ? { first } : {}), seconds: 5, clock });
      if (found.unplaced.length > 0 || found.placements.length === 0) continue;
      const best = oracle(document, objectiveOrder(first), step, found.placements);
      const problem = problemFor(document);
      const caps = first ? free : { late: best.values['key-dates'], finish: best.values.finish };
      const { atLeast } = windowBound(problem, { caps, enough: 9, stop: never });
      expect({ seed, low: atLeast <= best.values['fewest-windows'] }).toEqual({ seed, low: true });
      if (!first) {
        expect({ seed, ...prove(cappedOf(problem, caps), never) }).toMatchObject({ none: false });
        const late = { ...caps, finish: caps.finish - 1 };
        // Work that is over before the first window finishes at 0: there is nothing below it.
        if (caps.finish > 0)
          expect({ seed, ...prove(cappedOf(problem, late), never) }).toMatchObject({ none: true });
      }
      looked += 1;
      if (atLeast === best.values['fewest-windows']) met += 1;
    }
    expect(looked).toBeGreaterThan(cases / 4);
    expect(met).toBeGreaterThan(0.9 * looked);
  });
});
