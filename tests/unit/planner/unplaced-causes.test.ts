import { describe, expect, it } from 'vitest';
import {
  Board,
  LedgerCache,
  problemOf,
  type Problem,
  type Task,
} from '../../../src/planner/fit/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import {
  causesOf,
  fewestUnplacedCauses,
  type UnplacedCause,
} from '../../../src/planner/search/unplaced-causes.js';
import { MINUTE } from '../../../src/calendar/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { processorMs } from '../../helpers/processor-clock.js';

const cases = Number(process.env['UNPLACED_CASES'] ?? 150);
const options = { seconds: 2, clock: processorMs };

describe('causes of no place', () => {
  it('are told with the smallest set that is enough first', () => {
    const found = allocate(
      plan({
        windows: [window('P1', 0, 100)],
        activities: [
          activity('A1', 80, { resources: { crane: 1 }, keyDate: 80 }),
          activity('A2', 60, { resources: { crane: 1, gang: 3 }, package: 'W2' }),
        ],
        resources: [resource('crane', [{ capacity: 1 }]), resource('gang', [{ capacity: 2 }])],
      }),
      options,
    );
    const { reasons } = found.unplaced[0]!;
    // No later end would do, so that none is told beside it.
    expect(reasons).toMatchObject([{ code: 'resource-short', resources: ['gang'] }]);
  });

  it(`are enough and each of them is needed, minute by minute, in ${cases} random plans`, () => {
    let looked = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed + 40_000);
      const found = allocate(document, options);
      if (found.unplaced.length === 0) continue;
      const windows = document.windows.filter((item) => item.status !== 'withdrawn');
      const problem = problemOf(
        document,
        { windows, activities: document.activities },
        new LedgerCache(document),
      );
      const board = new Board(problem);
      for (const placement of found.placements) {
        const task = problem.tasks.find((each) => each.activity.id === placement.activity)!;
        board.put({
          task: task.index,
          window: windows.findIndex((each) => each.id === placement.window),
          start: (placement.from - problem.base) / MINUTE,
          end: (placement.to - problem.base) / MINUTE,
          units: placement.units ?? 1,
        });
      }
      for (const task of problem.tasks) {
        if (board.left[task.index] === 0 || task.slots.length === 0 || !board.ready(task)) continue;
        const causes = fewestUnplacedCauses(problem, board, task);
        const all = causesOf(problem, task);
        expect(all).toEqual(expect.arrayContaining(causes.slice()));
        const has = (some: readonly UnplacedCause[]): boolean =>
          placeByMinutes(problem, board, task, some, step);
        expect({ seed, causes, has: has(causes) }).toEqual({ seed, causes, has: false });
        for (const cause of causes)
          expect({
            seed,
            causes,
            one: cause,
            has: has(causes.filter((each) => each !== cause)),
          }).toEqual({
            seed,
            causes,
            one: cause,
            has: true,
          });
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(cases / 20);
  });
});

/** Every start, and every minute of the visit, asked on its own. */
function placeByMinutes(
  { supplies }: Problem,
  board: Board,
  task: Task,
  causes: readonly UnplacedCause[],
  step: number,
): boolean {
  const minutes = causes.includes('length') ? task.setUp + task.perUnit + task.makeSafe : 1;
  const levelAt = (supply: number, moment: number): number => {
    const { at, free } = causes.includes('other-work')
      ? board.free(supply)
      : supplies[supply]!.profile;
    return free[at.findLastIndex((each) => each <= moment)]!;
  };
  return task.slots.some((slot) => {
    for (let start = slot.start; start + minutes <= slot.end; start += minutes === 1 ? 1 : step) {
      const waits = task.before.some((tie) => {
        const from = tie.fromStart ? board.starts[tie.task]! : board.ends[tie.task]!;
        return start < from + tie.gap;
      });
      if (causes.includes('links') && waits) continue;
      if (causes.includes('not-before') && start < task.earliest) continue;
      if (start < board.ends[task.index]!) continue;
      let free = true;
      for (let now = start; free && now < start + minutes; now += 1)
        free = task.demands.every(
          ({ supply, amount }) =>
            !causes.includes(`resource ${supplies[supply]!.id}`) || levelAt(supply, now) >= amount,
        );
      if (free) return true;
    }
    return false;
  });
}
