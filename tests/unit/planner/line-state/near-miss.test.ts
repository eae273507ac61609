import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../../src/calendar/index.js';
import { ruleSetSchema, type Plan } from '../../../../src/model/index.js';
import { fitAll } from '../../../../src/planner/fit/index.js';
import { allocate } from '../../../../src/planner/search/index.js';
import { mustFollow } from '../../../helpers/line-check.js';
import { activity, plan, resource, window } from '../../../helpers/plan-builders.js';
import { randomLinePlan } from '../../../helpers/random-line-plan.js';

const options = { effort: 0.02, clock: () => 0 };

const moved = (item: Plan, id: string, by: number): Plan => ({
  ...item,
  windows: item.windows.map((each) =>
    each.id === id ? { ...each, end: each.end + by * MINUTE } : each,
  ),
});

describe('a later end that would do', () => {
  it('is not told of work longer than a shift, by fit or by the plan', () => {
    const shifts = { longestMinutes: 720, restMinutes: 720, changeoverMinutes: 30 };
    const one = plan({
      windows: [window('W1', 22 * 60 + 40, 610)],
      activities: [activity('LONG', 1200)],
      rules: ruleSetSchema.parse({ schema: 1, name: 'shifts', shifts }),
    });
    const [fit] = fitAll(one);
    const [left] = allocate(one, options).unplaced;
    for (const reasons of [fit!.reasons, left!.reasons]) {
      expect(reasons.map(({ code }) => code)).toContain('longer-than-a-shift');
      expect(reasons.filter(({ shortByMinutes }) => shortByMinutes !== undefined)).toEqual([]);
    }
    expect(fit!.spareMinutes).toBeNull();
  });

  it('is tried beside the work that is placed', () => {
    const one = plan({
      windows: [window('W1', 0, 300)],
      activities: [
        activity('A', 200, { resources: { crane: 1 }, keyDate: 200 }),
        activity('B', 150, { resources: { crane: 1 } }),
      ],
      resources: [resource('crane', [{ capacity: 1 }])],
    });
    const { placements, unplaced } = allocate(one, options);
    expect(placements.map((each) => each.activity)).toEqual(['B']);
    const short = unplaced[0]!.reasons.find((each) => each.shortByMinutes !== undefined);
    expect(short).toMatchObject({ code: 'too-short', shortByMinutes: 50 });
    expect(allocate(moved(one, 'W1', 50), options).unplaced).toEqual([]);
  });

  it('of a group is tried in three windows and for eight groups, and says so where there are more', () => {
    const lengths = [100, 90, 80, 70];
    const pairs = Array.from({ length: 9 }, (_, k) => [
      activity(`CUT${k}`, 60, { madeGoodBy: [`WELD${k}`] }),
      activity(`WELD${k}`, 60 + k, { after: [`CUT${k}`] }),
    ]);
    const plan4 = (windows: number, groups: number): string[] =>
      allocate(
        plan({
          windows: lengths.slice(0, windows).map((each, k) => window(`W${k + 1}`, 1440 * k, each)),
          activities: pairs.slice(0, groups).flat(),
        }),
        options,
      ).unplaced.flatMap(({ reasons }) =>
        reasons.flatMap((reason) => (reason.code === 'not-made-good' ? [reason.text] : [])),
      );
    const all = new Set(plan4(3, 8));
    // As many as are tried: nothing is said of a limit, and each names its own shortfall (120 + k in 100 minutes).
    expect(all.size).toBe(8);
    [...all].forEach((text, k) => expect(text).toContain(`in W1: short by ${20 + k} min`));
    expect([...all].filter((text) => /tried in|worked out for/.test(text))).toEqual([]);

    const four = new Set(plan4(4, 8));
    expect(
      [...four].every((text) => text.endsWith('(tried in the 3 windows of 4 with the most room)')),
    ).toBe(true);

    const nine = [...new Set(plan4(3, 9))];
    expect(nine.filter((text) => text.includes('short by'))).toHaveLength(8);
    expect(nine.filter((text) => !text.includes('short by'))).toEqual([
      'CUT8 cannot be made good in any window as it stands; how short was worked out for 8 other groups alone',
    ]);
  });

  it('lets in what it is told of, in random plans', () => {
    let tried = 0;
    for (let seed = 1; seed <= Number(process.env['LINE_CASES'] ?? 200); seed += 1) {
      const { plan: one } = randomLinePlan(seed);
      const found = allocate(one, options);
      for (const { activity: id, reasons } of found.unplaced)
        for (const { code, text, shortByMinutes } of reasons) {
          const in1 = / in (\S+): short by|end of (\S+) moves/.exec(text);
          const where = in1?.[1] ?? in1?.[2];
          if (shortByMinutes === undefined || where === undefined) continue;
          tried += 1;
          // Other work that is left over is no part of the question.
          const block = [
            id,
            ...one.activities
              .filter((each) => each.id === id || mustFollow(one, each).has(id))
              .flatMap((each) => [each.id, ...mustFollow(one, each)]),
          ];
          const asked = one.activities.filter(
            (each) =>
              block.includes(each.id) ||
              found.placements.some((placed) => placed.activity === each.id),
          );
          const later = { ...moved(one, where, shortByMinutes), activities: asked };
          const kept = allocate(later, { ...options, keep: found.placements });
          expect({
            seed,
            code,
            left: kept.unplaced.filter((each) => each.activity === id).length,
          }).toEqual({ seed, code, left: 0 });
        }
    }
    expect(tried).toBeGreaterThan(10);
  });
});
