import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { applyEdit } from '../../../src/edits/index.js';
import { optionsOf } from '../../../src/engine/options/options.js';
import type { OptionWish, OwnOption } from '../../../src/engine/options/types.js';
import { sitePlan } from '../../../src/engine/site/site-plan.js';
import type { Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { lineFaults } from '../../helpers/line-check.js';
import { planAsDocument } from '../../helpers/plan-as-document.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';

const cases = Number(process.env['LINE_CASES'] ?? 30);
const tools = { clock: () => 0, stopped: () => false, onProgress: () => undefined };

/** Wishes a person may have for a window: each piece of its work left out, more time, no more units after a moment. */
function wishesFor(plan: Plan, window: string, placements: readonly Placed[]) {
  const here = placements.filter((placement) => placement.window === window);
  const wish = (name: string, item: OptionWish): OwnOption => ({ name, wish: item });
  const ids = [...new Set(here.map((item) => item.activity))];
  return [
    ...ids.map((activity) => wish(`without ${activity}`, { leaveOut: [{ activity, units: 1 }] })),
    wish('longer', { longerMinutes: 30 }),
    wish('longer without the last', {
      longerMinutes: 30,
      leaveOut: [{ activity: ids.at(-1)!, units: 1 }],
    }),
    wish('cut off', { cutOffAt: here[0]!.from + 20 * MINUTE }),
    ...plan.resources.map(({ id }) => wish(`more ${id}`, { extra: { resource: id, count: 1 } })),
  ];
}

/** The plan with work that may take up to three times as long, so that some of its handbacks are late. */
const uncertain = (plan: Plan): Plan => ({
  ...plan,
  activities: plan.activities.map((activity) =>
    activity.work.kind === 'units'
      ? activity
      : {
          ...activity,
          work: {
            ...activity.work,
            spread: { low: activity.work.minutes, high: 3 * activity.work.minutes },
          },
        },
  ),
});

interface Placed {
  readonly activity: string;
  readonly window: string | null;
  readonly from: number;
}

describe('the ways out of a window', () => {
  it(`leave the line fit to run in ${cases} random plans, by a check that shares no code`, () => {
    const kinds = new Map<string, number>();
    let asked = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const document = planAsDocument(uncertain(randomLinePlan(seed).plan));
      const { plan, faults } = sitePlan(document);
      // Tables may not say some plans: work bound to one window that is made good in another, for one.
      if (faults.some((fault) => fault.severity === 'error')) continue;
      asked += 1;
      const allocation = allocate(plan, { effort: 0.01, clock: () => 0 });
      for (const { id } of plan.windows) {
        if (!allocation.placements.some((placement) => placement.window === id)) continue;
        const answer = optionsOf(
          document,
          {
            ...{ window: id, seed: 1, runs: 20, effortPerOption: 0.01, splitDaysLater: 1 },
            ...{ allocation, own: wishesFor(plan, id, allocation.placements) },
          },
          tools,
        )!;
        for (const option of answer.options) {
          if (option.state !== 'priced') continue;
          kinds.set(option.kind, (kinds.get(option.kind) ?? 0) + 1);
          const then = option.edit ? sitePlan(applyEdit(document, option.edit)).plan : plan;
          const faults = [...lineFaults(then, option.placements), ...option.faults];
          expect({ seed, window: id, option: option.name, faults }).toEqual({
            ...{ seed, window: id, option: option.name },
            faults: [],
          });
        }
      }
    }
    expect(asked).toBeGreaterThan(cases / 2);
    const wanted = ['as-planned', 'longer-window', 'split', 'own', 'one-unit-less'];
    expect(wanted.filter((kind) => !kinds.has(kind))).toEqual([]);
  });
});
