import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import type { Plan } from '../../../src/model/index.js';
import {
  compareScores,
  type Problem,
  type Score,
  type Visit,
} from '../../../src/planner/fit/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { preparedOf } from '../../../src/planner/search/allocate.js';
import { changed, type Aim } from '../../../src/planner/search/changes.js';
import { Decoder, type Recipe } from '../../../src/planner/search/decode.js';
import {
  attemptOf,
  construct,
  recipeOf,
  type Attempt,
} from '../../../src/planner/search/improve.js';
import { goalOf } from '../../../src/planner/search/objectives.js';
import type { Objective } from '../../../src/planner/search/types.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';

const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];
const plans: readonly [string, Plan][] = [
  ...(['A', 'B', 'E'] as const).map((name): [string, Plan] => [
    name,
    planOfFamily(families[name]!, 4),
  ]),
  // Pieces of which some can never be placed, and of repeated work some units.
  ['E 2', planOfFamily(families['E']!, 2)],
  ...Array.from({ length: 60 }, (_, i): [string, Plan] => [
    `line ${i + 1}`,
    randomLinePlan(i + 1).plan,
  ]),
];

/** What is amiss with the order of a recipe. */
function faultsOf({ tasks, order, clusters = [] }: Problem, { steps }: Recipe): string[] {
  const first = new Map<number, number>();
  const last = new Map<number, number>();
  steps.forEach((step, at) => {
    for (const task of step.tasks) {
      first.set(task, first.get(task) ?? at);
      last.set(task, at);
    }
  });
  const faults = order.filter((task) => !last.has(task)).map((task) => `${task} has no turn`);
  for (const [task, at] of last) {
    if (steps[at]!.units !== 0) faults.push(`units of ${task} are left over`);
    for (const tie of tasks[task]!.before)
      if (last.get(tie.task)! > first.get(task)!) faults.push(`${task} before ${tie.task}`);
  }
  clusters.forEach((cluster, at) => {
    const own = steps.filter((step) => step.cluster === at);
    if (own.length !== 1 || own[0]!.tasks.length !== cluster.tasks.length)
      faults.push(`cluster ${at} is not one turn`);
  });
  return faults;
}

/** Asked some hundred thousand times: `expect` is for telling where two differ, which takes it a hundred times as long. */
function expectSame(found: unknown, wanted: unknown, name: string): void {
  if (!isDeepStrictEqual(found, wanted)) expect(found, name).toEqual(wanted);
}

const sorted = (visits: readonly Visit[]): readonly Visit[] =>
  visits.toSorted((a, b) => a.task - b.task || a.start - b.start);

const aims: readonly Aim[] = ['placed', 'late', 'finish', 'windows'];

/** Some hundred recipes of a plan, each a change away from one before. */
function walk(plan: Plan, first: Objective | undefined, look: (next: Recipe) => Attempt): number {
  const { problem } = preparedOf(plan, { clock: () => 0 });
  const goal = goalOf(first);
  const bound = [0, 0, 0, 0, 0];
  const options = { goal, seed: 1, bound, stop: () => false };
  const random = createRandom(problem.tasks.length);
  let at: Attempt = construct(problem, options);
  let turns = 0;
  for (; turns < 120; turns += 1) {
    const recipe =
      turns % 40 === 39
        ? recipeOf(problem, at)
        : changed(problem, at, aims[turns % aims.length]!, random);
    expectSame(faultsOf(problem, recipe), [], 'faults');
    const next = look(recipe);
    if (random.below(3) > 0) at = next;
  }
  return turns;
}

describe('a recipe, whatever was placed before it', () => {
  it('comes to the plan that it comes to by itself', () => {
    for (const [name, plan] of plans)
      for (const first of firsts) {
        const { problem, goal } = preparedOf(plan, { clock: () => 0, ...(first && { first }) });
        const decoder = new Decoder(problem, goal);
        walk(plan, first, (recipe) => {
          const alone = attemptOf(problem, recipe, goal);
          const { visits, left, starts, ends, since } = decoder.decode(recipe);
          expectSame(visits, alone.visits, name);
          const fresh = new Decoder(problem, goal).decode(recipe);
          expectSame(
            [left, starts, ends, since],
            [fresh.left, fresh.starts, fresh.ends, fresh.since],
            name,
          );
          return alone;
        });
      }
  });

  it('is given up half made only where all of it is worse than what is known', () => {
    let given = 0;
    let worse = 0;
    let same = 0;
    for (const [name, plan] of plans)
      for (const first of firsts) {
        const { problem, goal } = preparedOf(plan, { clock: () => 0, ...(first && { first }) });
        const decoder = new Decoder(problem, goal);
        let than: Score | undefined;
        let kept: readonly Visit[] | undefined;
        walk(plan, first, (recipe) => {
          const alone = attemptOf(problem, recipe, goal);
          than ??= alone.score;
          const board = decoder.decodeNoWorse(recipe, than);
          const isWorse = compareScores(alone.score, than) > 0;
          if (board === 'same') {
            expectSame(sorted(kept!), sorted(alone.visits), name);
            same += 1;
          } else if (board) {
            expectSame(board.visits, alone.visits, name);
            if (!isWorse) kept = decoder.keep(recipe);
          } else
            expectSame(isWorse, true, `${name}: ${String(alone.score)} beside ${String(than)}`);
          given += Number(!board);
          worse += Number(isWorse);
          if (!isWorse) than = alone.score;
          return alone;
        });
      }
    // Most of what is worse is seen to be so on the way.
    expect(given).toBeGreaterThan(worse / 2);
    expect(same).toBeGreaterThan(1000);
  });
});
