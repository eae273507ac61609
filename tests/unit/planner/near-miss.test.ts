import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { ruleSetSchema, type Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';

const options = { clock: (): number => 0, effort: 0.2 };
const cases = Number(process.env['MISS_CASES'] ?? 200);

const longer = (of: Plan, id: string, by: number): Plan => ({
  ...of,
  windows: of.windows.map((item) =>
    item.id === id ? { ...item, end: item.end + by * MINUTE } : item,
  ),
});

describe('the near miss of work that is left over', () => {
  it(`places it where the end moves as far as is told, in ${cases} random plans`, () => {
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: document } = randomPlan(seed);
      const found = allocate(document, options);
      for (const { activity: id, reasons } of found.unplaced)
        for (const { code, text, shortByMinutes } of reasons) {
          if (code !== 'too-short' || shortByMinutes === undefined) continue;
          const name = /end of (\S+) moves/.exec(text)![1]!;
          // Beside all that is placed; other work that is left over would take the time too.
          const others = new Set(
            found.unplaced.map((item) => item.activity).filter((item) => item !== id),
          );
          const alone = {
            ...document,
            activities: document.activities.filter((item) => !others.has(item.id)),
          };
          const then = allocate(longer(alone, name, shortByMinutes), {
            ...options,
            keep: found.placements.filter((placement) => !others.has(placement.activity)),
          });
          expect({ seed, id, left: then.unplaced.some((item) => item.activity === id) }).toEqual({
            seed,
            id,
            left: false,
          });
        }
    }
  });

  // 20 hours in one piece, where a shift is no longer than 12: no later end helps, and none is told.
  it('tells none where shifts break up the time however long it is', () => {
    const document = plan({
      windows: [window('P1', 0, 610)],
      activities: [activity('A1', 1200)],
      rules: ruleSetSchema.parse(
        JSON.parse(readFileSync('sample-csv/rules/electrified-two-track.json', 'utf8')),
      ),
    });
    const [left] = allocate(document, options).unplaced;
    expect(left!.reasons.map((reason) => reason.code)).not.toContain('too-short');
  });
});

describe('a certificate of nothing', () => {
  it('says so, and proves nothing', () => {
    const empty = allocate(plan({ windows: [window('P1', 0, 300)] }), options).certificate;
    expect(empty).toMatchObject({ proven: false, text: 'nothing to plan' });
    const without = allocate(plan({ activities: [activity('A1', 60)] }), options).certificate;
    expect(without).toMatchObject({ proven: false, text: 'nothing is placed' });
  });

  it('proves of a plan with work held in place only what no plan beats', () => {
    const document = plan({
      windows: [window('P1', 0, 300), window('P2', 1440, 300)],
      activities: [activity('A1', 60)],
    });
    const keep = [{ activity: 'A1', window: 'P2', from: 1440 * MINUTE, to: 1500 * MINUTE }];
    const { certificate } = allocate(document, { ...options, keep });
    const finish = certificate.objectives.find((objective) => objective.name === 'finish')!;
    expect(finish).toMatchObject({ value: 1500, lowerBound: 60, proven: false });
  });
});
