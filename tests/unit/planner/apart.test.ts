import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import type { Plan } from '../../../src/model/index.js';
import { boundOf } from '../../../src/planner/bounds/bounds.js';
import { compareScores } from '../../../src/planner/fit/index.js';
import { preparedOf } from '../../../src/planner/search/allocate.js';
import { partsOf, searchApart } from '../../../src/planner/search/apart.js';
import { allocate, type Objective } from '../../../src/planner/search/index.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import { search } from '../../../src/planner/search/search.js';
import { verify } from '../../../src/verify/index.js';
import { lineFaults } from '../../helpers/line-check.js';
import { oracle } from '../../helpers/oracle.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';
import { randomPlan } from '../../helpers/random-plan.js';

const cases = Number(process.env['APART_CASES'] ?? 50);
const clock = (): number => 0;
const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];

/** A plan on a line of its own, with names of its own. */
function on(line: string, { windows, activities, resources, ...rest }: Plan): Plan {
  const own = (name: string): string => `${line}-${name}`;
  return {
    ...rest,
    windows: windows.map((window) => ({
      ...window,
      id: own(window.id),
      lines: [...window.lines, line],
    })),
    resources: resources.map((resource) => ({ ...resource, id: own(resource.id) })),
    activities: activities.map((activity) => ({
      ...activity,
      id: own(activity.id),
      package: own(activity.package),
      lines: [...activity.lines, line],
      after: activity.after.map((link) => ({ ...link, activity: own(link.activity) })),
      resources: activity.resources.map((need) => ({ ...need, resource: own(need.resource) })),
      ...(activity.window !== undefined && { window: own(activity.window) }),
      ...(Array.isArray(activity.madeGoodBy) && { madeGoodBy: activity.madeGoodBy.map(own) }),
    })),
  };
}

/** Two plans on two lines as one, by the rules of the first. */
function both(one: Plan, other: Plan): Plan {
  const [a, b] = [on('north', one), on('south', other)];
  return {
    ...a,
    windows: [...a.windows, ...b.windows],
    resources: [...a.resources, ...b.resources],
    activities: [...a.activities, ...b.activities],
  };
}

describe('work that has nothing to do with other work', () => {
  it(`is planned apart as well as the plain search plans all, in ${cases} random plans`, () => {
    let apart = 0;
    let looked = 0;
    let proven = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const make = seed % 2 === 0 ? randomPlan : randomLinePlan;
      const one = make(seed);
      const two = make(seed + 5000);
      const plan = both(one.plan, two.plan);
      const first = firsts[seed % firsts.length];
      const options = { clock, effort: 0.2, ...(first && { first }) };
      const { problem } = preparedOf(plan, options);
      apart += Number(partsOf(problem).length > 1);
      const found = allocate(plan, options);
      const faults = verify(plan, found);
      expect({ seed, faults, open: lineFaults(plan, found.placements) }).toEqual({
        seed,
        faults: [],
        open: [],
      });
      // The plain search steps by minutes from the first window's start: the two must keep step. Work outside a window may
      // lie anywhere between the first window and the last, and a season between them has too many steps.
      const starts = plan.windows.map(({ start }) => (start - plan.windows[0]!.start) / 60_000);
      const inStep = one.step === two.step && starts.every((start) => start % one.step === 0);
      const days = (Math.max(...starts) - Math.min(...starts)) / 1440;
      const isOutside = plan.activities.some(({ place }) => place === 'outside');
      if (!inStep || (isOutside && days > 4) || plan.activities.length > 5) continue;
      looked += 1;
      const best = oracle(plan, objectiveOrder(first), one.step, found.placements);
      const told = found.certificate.objectives.filter(({ name }) => name !== 'margins');
      expect({
        seed,
        unplaced: found.unplaced.length,
        values: Object.fromEntries(told.map(({ name, value }) => [name, value])),
      }).toEqual({ seed, unplaced: best.unplaced, values: best.values });
      proven += Number(told.every((each) => each.proven));
      // In rounds, each from the one before: as good, and no bound above the best there is.
      const again = allocate(plan, { ...options, effort: 0.001, seconds: 1 });
      const values = again.certificate.objectives.filter(({ name }) => name !== 'margins');
      expect({
        seed,
        values: Object.fromEntries(values.map(({ name, value }) => [name, value])),
        above: values.filter(({ value, lowerBound }) => lowerBound > value),
      }).toEqual({ seed, values: best.values, above: [] });
    }
    expect(apart).toBeGreaterThan(cases * 0.9);
    expect(looked).toBeGreaterThan(cases / 10);
    expect(proven).toBeGreaterThan(looked / 2);
  });

  it('is planned no worse than all together, and its bounds are no higher than any plan', () => {
    for (const [a, b] of [
      ['A', 1, 'A', 2],
      ['A', 3, 'E', 9],
      ['B', 3, 'E', 8],
    ].map(([f, s, g, t]) => [
      planOfFamily(families[f!]!, Number(s)),
      planOfFamily(families[g!]!, Number(t)),
    ])) {
      const plan = both(a!, b!);
      const prepare = () => preparedOf(plan, { clock, effort: 0.3 });
      const { problem, goal } = prepare();
      expect(partsOf(problem).length).toBeGreaterThan(1);
      const options = { seed: 1, onBetter: () => undefined };
      const apart = searchApart(problem, goal, boundOf(problem, goal), options);
      const whole = prepare();
      const together = search(whole.problem, goal, boundOf(whole.problem, goal), options);
      const pair = { apart: apart.score, together: together.score };
      expect(compareScores(apart.score, together.score), JSON.stringify(pair)).toBeLessThanOrEqual(
        0,
      );
      const further = prepare().problem;
      const again = searchApart(further, goal, apart.bound, {
        ...options,
        seed: 2,
        from: apart,
      });
      expect(compareScores(again.score, apart.score)).toBeLessThanOrEqual(0);
      for (const [i, value] of again.score.entries())
        expect(again.bound[i]!).toBeLessThanOrEqual(value);
      for (const [i, value] of apart.score.entries()) {
        expect(apart.bound[i]!).toBeLessThanOrEqual(value);
        if (together.score[i] !== value) break;
        expect(together.bound[i]!).toBeLessThanOrEqual(value);
      }
    }
  });
});
