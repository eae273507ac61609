import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import { boundOf } from '../../../src/planner/bounds/bounds.js';
import { createRandom } from '../../../src/planner/random.js';
import { heldAs } from '../../../src/planner/search/held.js';
import { attemptOf, construct } from '../../../src/planner/search/improve.js';
import { rightJustified, rightJustifiedStarts } from '../../../src/planner/search/justify.js';
import { preparedOf } from '../../../src/planner/search/allocate.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';

const clock = (): number => 0;

describe('a schedule put off as long as it can be', () => {
  // Worked by hand. One gang, one window of ten hours: C 0 to 150, A 150 to 250, then B, 250 to 450. B moves to the end (400
  // to 600), A before it (300 to 400), C before that (150 to 300).
  it('has every piece as late as the next one lets it be', () => {
    const given = plan({
      windows: [window('P1', 0, 600)],
      activities: [
        activity('A', 100, { resources: { gang: 1 } }),
        activity('B', 200, { resources: { gang: 1 }, after: ['A'] }),
        activity('C', 150, { resources: { gang: 1 } }),
      ],
      resources: [resource('gang', [{ capacity: 1 }])],
    });
    const { problem } = preparedOf(given, { clock });
    const at = (id: string): number => problem.tasks.find((task) => task.activity.id === id)!.index;
    const { start, end } = problem.tasks[0]!.slots[0]!;
    expect(end - start).toBe(600);
    const visit = (id: string, from: number, to: number) => ({
      task: at(id),
      window: 0,
      start: start + from,
      end: start + to,
      units: 1,
    });
    const visits = [visit('C', 0, 150), visit('A', 150, 250), visit('B', 250, 450)];
    const starts = rightJustifiedStarts(problem, { visits }, Uint8Array.of(1));
    expect(['A', 'B', 'C'].map((id) => starts[at(id)]! - start)).toEqual([300, 400, 150]);
  });

  // What is known of it: no piece begins sooner, and placed in that order from the front again none ends later than there, so that no
  // date is lost. Valls, Ballestín and Quintanilla, European Journal of Operational Research 165 (2005), from memory.
  it('begins nothing sooner, and its order keeps every date that was kept', () => {
    let later = 0;
    for (const name of ['A', 'B', 'C'] as const)
      for (let seed = 1; seed <= 4; seed += 1) {
        const given = planOfFamily(families[name]!, seed);
        const { problem, goal } = preparedOf(given, { clock });
        const from = construct(problem, {
          goal,
          seed,
          bound: boundOf(problem, goal),
          stop: () => false,
        });
        const held = heldAs(problem, from, goal);
        const { allowed } = from.recipe;
        const starts = rightJustifiedStarts(held, from, allowed);
        for (const { task, start } of from.visits) {
          expect(starts[task]).toBeGreaterThanOrEqual(start);
          if (starts[task]! > start) later += 1;
        }
        const again = attemptOf(
          held,
          { steps: rightJustified(held, from, allowed), allowed },
          goal,
        );
        expect(again.visits).toHaveLength(from.visits.length);
        for (const { task, start } of again.visits)
          expect(start).toBeLessThanOrEqual(starts[task]!);
      }
    expect(later).toBeGreaterThan(100);
  });

  // No temperature is known, so that nothing is ever said to have cured: that must not take its place from what is poured.
  it('asks no curing for work that has no room and no limit', () => {
    const load = activity('LOAD', 900, { after: ['CAST'] });
    const given = plan({
      windows: [window('P1', 0, 600)],
      activities: [
        activity('CAST', 60),
        { ...load, after: load.after.map((link) => ({ ...link, cured: true })) },
      ],
      curing: {
        settings: {
          maturity: 100,
          model: { model: 'temperature-time', datumC: 0 },
          source: 'this test',
          sureness: 'our own',
        },
        temperatures: [],
      },
    });
    const { problem } = preparedOf(given, { clock });
    const starts = rightJustifiedStarts(problem, { visits: [] }, Uint8Array.of(1));
    expect(starts[problem.tasks.findIndex((task) => task.activity.id === 'CAST')]).toBe(540);
  });

  it('holds everything in order, whatever is left out', () => {
    const given = planOfFamily(families['E']!, 3);
    const { problem } = preparedOf(given, { clock });
    const random = createRandom(1);
    const allowed = Uint8Array.from(problem.windows, () => random.below(2));
    const seen = new Set<number>();
    for (const { tasks } of rightJustified(problem, { visits: [] }, allowed))
      for (const task of tasks) {
        for (const tie of problem.tasks[task]!.before) expect(seen).toContain(tie.task);
        seen.add(task);
      }
    expect(seen.size).toBe(problem.order.length);
  });
});
