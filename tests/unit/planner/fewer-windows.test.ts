import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import { boundOf } from '../../../src/planner/bounds/bounds.js';
import { placementsOf } from '../../../src/planner/fit/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { allocate } from '../../../src/planner/search/index.js';
import { preparedOf } from '../../../src/planner/search/allocate.js';
import { fewerWindows } from '../../../src/planner/search/fewer-windows.js';
import { construct } from '../../../src/planner/search/improve.js';
import { goalOf } from '../../../src/planner/search/objectives.js';
import type { Objective } from '../../../src/planner/search/types.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';

const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];

/** Triples that fill a night each: cut at random, so the fewest nights are known by how they were made. */
function triples(nights: number, seed: number): number[] {
  const random = createRandom(seed);
  return Array.from({ length: nights }, () => {
    const [one, two] = [80 + 20 * random.below(3), 80 + 20 * random.below(3)];
    return [one, two, 300 - one - two];
  })
    .flat()
    .map((minutes) => ({ minutes, at: random.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ minutes }) => minutes);
}

describe('fewer windows', () => {
  // Instances whose bins are filled exactly by three: Falkenauer, "A hybrid grouping genetic algorithm for bin packing",
  // Journal of Heuristics 2 (1996), class "triplets", here with
  // pieces in steps of 20 minutes; the recipe from memory.
  it('come down to the nights that triples were cut from', () => {
    const nights = 6;
    for (let seed = 1; seed <= 4; seed += 1) {
      const pieces = triples(nights, seed);
      const document = plan({
        windows: Array.from({ length: 14 }, (_, i) => window(`P${i + 1}`, 1440 * i, 300)),
        activities: pieces.map((minutes, i) =>
          activity(`A${i + 1}`, minutes, { resources: { gang: 1 } }),
        ),
        resources: [resource('gang', [{ capacity: 1 }])],
      });
      const found = allocate(document, { first: 'fewest-windows', clock: () => 0 });
      expect(verify(document, found)).toEqual([]);
      expect({ seed, windows: found.windowsUsed, out: found.unplaced }).toEqual({
        seed,
        windows: nights,
        out: [],
      });
    }
  });

  it('cost nothing of what comes before their count, begun in any windows', () => {
    let fewer = 0;
    for (const [name, seed] of [
      ['A', 2],
      ['B', 2],
      ['B', 7],
      ['E', 2],
      ['E', 3],
    ] as const)
      for (const first of firsts)
        for (const start of [undefined, [0, 2, 3]]) {
          const given = planOfFamily(families[name]!, seed);
          const { problem } = preparedOf(given, { clock: () => 0 });
          const goal = goalOf(first);
          const bound = boundOf(problem, goal);
          let turns = 0;
          const options = { goal, bound, seed: 1, stop: () => (turns += 1) > 400 };
          const from = construct(problem, { ...options, stop: () => false });
          const found = fewerWindows(problem, from, options, start);
          const at = 2 + goal.ahead;
          for (let i = 0; i < at; i += 1)
            expect(found.score[i]).toBeLessThanOrEqual(from.score[i]!);
          if (found === from) continue;
          fewer += 1;
          expect(found.score.slice(0, at + 1)).not.toEqual(from.score.slice(0, at + 1));
          expect(verify(given, { placements: placementsOf(problem, found.visits) })).toEqual([]);
        }
    expect(fewer).toBeGreaterThan(10);
  });

  it('leave in its window what is kept', () => {
    const given = planOfFamily(families['B']!, 2);
    const whole = allocate(given, { effort: 0.02, clock: () => 0 });
    const keep = whole.placements.slice(0, 6);
    const again = allocate(given, { effort: 0.05, clock: () => 0, keep });
    for (const placement of keep) expect(again.placements).toContainEqual(placement);
    expect(verify(given, { placements: again.placements })).toEqual([]);
  });
});
