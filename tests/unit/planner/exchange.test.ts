import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import { boundOf } from '../../../src/planner/bounds/bounds.js';
import { compareScores, placementsOf } from '../../../src/planner/fit/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { preparedOf } from '../../../src/planner/search/allocate.js';
import { canEject } from '../../../src/planner/search/eject.js';
import { exchanged, heldIn, inFewer, reached } from '../../../src/planner/search/exchange.js';
import { construct } from '../../../src/planner/search/improve.js';
import { goalOf, scoreIn, usedBy, windowsIn } from '../../../src/planner/search/objectives.js';
import type { Objective } from '../../../src/planner/search/types.js';
import { verify } from '../../../src/verify/index.js';
import { seeds } from '../../helpers/cases.js';
import { randomPlan } from '../../helpers/random-plan.js';

const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];
const clock = (): number => 0;
const stop = (): boolean => false;

// What each test finds is looked at by the checker, which shares no code with the search.
describe('work that puts out other work', () => {
  it('breaks no constraint of small plans, is no worse and needs no more windows than are asked', () => {
    let found = 0;
    for (const seed of seeds(600)) {
      const { plan } = randomPlan(seed);
      const goal = goalOf(firsts[seed % firsts.length]);
      const { problem } = preparedOf(plan, { clock });
      if (!canEject(problem) || problem.tasks.length === 0) continue;
      const from = construct(problem, { goal, bound: boundOf(problem, goal), seed, stop });
      const random = createRandom(seed);
      for (const emptied of usedBy(from)) {
        const most = random.below(1 + windowsIn(from.visits));
        const wanted = heldIn(problem, from, goal, most);
        const visits = reached(problem, from, wanted, { random, steps: 2000, stop, emptied });
        if (!visits) continue;
        found += 1;
        expect(windowsIn(visits)).toBeLessThanOrEqual(most);
        const length = 2 + goal.ahead;
        const score = scoreIn(problem, goal, visits).slice(0, length);
        expect(compareScores(score, from.score.slice(0, length))).toBeLessThanOrEqual(0);
        const faults = verify(plan, { placements: placementsOf(problem, visits) });
        expect({ seed, faults }).toEqual({ seed, faults: [] });
      }
    }
    expect(found).toBeGreaterThan(seeds(600).length / 10);
  });

  it('betters plans of the shape that users have, and breaks no constraint of them', () => {
    let better = 0;
    for (const [name, seed] of [
      ['A', 2],
      ['B', 2],
      ['B', 8],
      ['E', 3],
      ['E', 5],
      ['E', 10],
    ] as const)
      for (const first of firsts)
        for (const search of [exchanged, inFewer]) {
          const given = planOfFamily(families[name]!, seed);
          const { problem } = preparedOf(given, { clock });
          const goal = goalOf(first);
          const bound = boundOf(problem, goal);
          const from = construct(problem, { goal, bound, seed: 1, stop });
          const over = problem.effort.untilSpent(problem.effort.spent + 150_000);
          const answer = search(problem, from, { goal, bound, seed: 1, stop: over });
          expect(compareScores(answer.score, from.score)).toBeLessThanOrEqual(0);
          expect(answer.score).toEqual(scoreIn(problem, goal, answer.visits));
          if (compareScores(answer.score, from.score) < 0) better += 1;
          expect(verify(given, { placements: placementsOf(problem, answer.visits) })).toEqual([]);
        }
    expect(better).toBeGreaterThan(18);
  });
});
