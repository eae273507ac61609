import { describe, expect, it } from 'vitest';
import type { Activity, Placement, Plan } from '../../../../src/model/index.js';
import { allocate, leftOpenNotes, unstatedIn } from '../../../../src/planner/search/index.js';
import { createRandom } from '../../../../src/planner/random.js';
import { meet } from '../../../helpers/line-check.js';
import { activity, plan, window } from '../../../helpers/plan-builders.js';
import { randomLinePlan } from '../../../helpers/random-line-plan.js';
import { processorMs } from '../../../helpers/processor-clock.js';
import { inJson } from '../../../helpers/in-json.js';

const cases = Number(process.env['LINE_CASES'] ?? 200);

/** The pairs that the meaning of the columns makes, found by asking every two rows and every two pieces. */
function pairsOf({ activities }: Plan, placements: readonly Placement[]): string[] {
  const pieces = (item: Activity): Placement[] =>
    placements.filter((each) => each.activity === item.id);
  const found: string[] = [];
  for (const [i, x] of activities.entries())
    for (const [j, y] of activities.entries()) {
      if (x.place === 'outside' || y.place === 'outside') continue;
      const stopsSafely = x.work.kind === 'units' && x.work.makeSafeMinutes > 0;
      const apart = pieces(x).some((a) =>
        pieces(y).some((b) => a.window !== b.window && a.from < b.from),
      );
      if (
        x.package === y.package &&
        apart &&
        x.madeGoodBy === undefined &&
        !(i === j && stopsSafely)
      )
        found.push(`between-windows ${x.id} ${y.id}`);
      const together = pieces(x).some((a) =>
        pieces(y).some((b) => Math.max(a.from, b.from) < Math.min(a.to, b.to)),
      );
      const said = [x.occupies, y.occupies];
      if (i < j && together && meet(x, y) && !said.includes('alone') && said.includes(undefined))
        found.push(`same-place ${x.id} ${y.id}`);
    }
  return found.sort();
}

const told = (item: Plan, placements: readonly Placement[]): string[] =>
  unstatedIn(item, placements)
    .map((each) => `${each.kind} ${each.activity} ${each.other}`)
    .sort();

describe('what a plan leaves unsaid', () => {
  it(`is every pair and no other, in ${cases} random plans with and without the columns`, () => {
    let pairs = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: full, step } = randomLinePlan(seed);
      const bare: Plan = {
        ...full,
        activities: full.activities.map(({ madeGoodBy: _, occupies: __, ...one }) => one),
      };
      for (const item of [full, bare]) {
        const { placements, unstated } = allocate(item, {
          effort: 0.001,
          clock: () => 0,
        });
        expect({ seed, told: told(item, placements) }).toEqual({
          seed,
          told: pairsOf(item, placements),
        });
        expect(unstated).toEqual(unstatedIn(item, placements));
        // The same pieces thrown about anyhow.
        const random = createRandom(seed);
        const thrown = placements.map((each) => {
          const by = random.below(20) * step * 60_000;
          const to = item.windows[random.below(item.windows.length)]!.id;
          return { ...each, window: each.window && to, from: each.from + by, to: each.to + by };
        });
        expect({ seed, told: told(item, thrown) }).toEqual({ seed, told: pairsOf(item, thrown) });
        pairs += told(item, thrown).length;
      }
    }
    expect(pairs).toBeGreaterThan(cases / 5);
  });

  it('says it in words, and of work left over that was begun', () => {
    const one = plan({
      windows: [window('W1', 0, 100), window('W2', 10_080, 100)],
      activities: [
        activity('LIFT', 90),
        activity('TAMP', 60, { after: ['LIFT'] }),
        activity('TEST', 200, { after: ['TAMP'] }),
      ],
    });
    const found = allocate(one, { seconds: 1, clock: processorMs });
    expect(inJson(found.unstated)).toEqual([
      {
        activity: 'LIFT',
        other: 'TAMP',
        kind: 'between-windows',
        windows: ['W1', 'W2'],
        text: 'LIFT is in W1 and TAMP in W2: nothing says whether the line is fit to run in between',
      },
    ]);
    expect(inJson(found.notes)).toEqual([
      {
        code: 'left-open',
        text: 'Nothing says whether the line is fit to run where work stops: LIFT, TAMP of W1 is placed and TEST is left over.',
      },
    ]);
    const safe = {
      ...one,
      activities: one.activities.map((each) => ({ ...each, madeGoodBy: 'none' as const })),
    };
    expect(unstatedIn(safe, found.placements)).toEqual([]);
    expect(leftOpenNotes(safe, found.placements)).toEqual([]);
  });
});
