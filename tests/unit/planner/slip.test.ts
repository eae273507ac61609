import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Placement, Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import { oracle } from '../../helpers/oracle.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';

const cases = Number(process.env['SLIP_CASES'] ?? 60);
const options = { clock: (): number => 0, effort: 0.2 };

/** Whether a plan exists in which nothing begins sooner than placed, one finish is held back and no date gets worse. */
function canSlip(of: Plan, placed: readonly Placement[], id: string, by: number, step: number) {
  const at = new Map(placed.map((placement) => [placement.activity, placement]));
  const held: Plan = {
    ...of,
    activities: of.activities.map((item) => {
      const { from } = at.get(item.id)!;
      const date = Math.max(
        item.keyDate ?? Infinity,
        ...of.activities
          .filter((other) => other.package === item.package && other.keyDate === item.keyDate)
          .map((other) => at.get(other.id)!.to),
      );
      return {
        ...item,
        notBefore: from + (item.id === id ? by * MINUTE : 0),
        ...(item.keyDate !== undefined && { keyDate: date }),
      };
    }),
  };
  const value = oracle(held, objectiveOrder(), step);
  return value.unplaced === 0 && value.values['key-dates'] === 0;
}

describe('programme float', () => {
  it(`is how far a finish can be held back, found by planning again, in ${cases} random plans`, () => {
    let looked = 0;
    for (let seed = 1; looked < cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed);
      if (document.activities.some((item) => item.work.kind === 'units')) continue;
      if (document.activities.some((item) => item.place === 'outside')) continue;
      const found = allocate(document, options);
      if (found.unplaced.length > 0 || found.keyDates.length === 0) continue;
      looked += 1;
      for (const { activity: id, slipMinutes = -1 } of found.floats) {
        const by = Math.floor(slipMinutes / step) * step;
        const can = (minutes: number): boolean =>
          canSlip(document, found.placements, id, minutes, step);
        expect({ seed, id, slipMinutes, can: can(by) }).toEqual({
          seed,
          id,
          slipMinutes,
          can: true,
        });
        const more = by + step;
        expect({ seed, id, more, can: can(more) }).toEqual({ seed, id, more, can: false });
      }
    }
  });

  it('is not the days to its date where a follower would be late after four hours', () => {
    const document = plan({
      windows: [window('P1', 0, 600), window('P2', 60 * 1440, 600)],
      activities: [
        activity('A1', 60, { package: 'W1', keyDate: 61 * 1440 }),
        activity('A2', 300, { package: 'W2', after: ['A1'], keyDate: 600 }),
      ],
    });
    const [first, second] = allocate(document, options).keyDates;
    expect(first).toMatchObject({ floatMinutes: 240, floatWindows: 0 });
    expect(second).toMatchObject({ floatMinutes: 240 });
  });

  it('ends with the last window', () => {
    const document = plan({
      windows: [window('P1', 0, 600)],
      activities: [activity('A1', 300, { keyDate: 3 * 1440 })],
    });
    expect(allocate(document, options).keyDates).toMatchObject([{ floatMinutes: 300 }]);
  });

  it('moves on what waits for its start, though that is over sooner', () => {
    const document = plan({
      windows: [window('P1', 0, 600), window('P2', 1440, 600)],
      activities: [
        activity('A1', 185),
        activity('A2', 145, { package: 'W2', after: ['start of A1'], keyDate: 200 }),
      ],
    });
    expect(allocate(document, options).floats).toMatchObject([
      { slipMinutes: 55 },
      { slipMinutes: 55 },
    ]);
  });

  it('reaches to the end of a long window, past a short one inside it', () => {
    const document = plan({
      windows: [window('P1', 0, 900), window('P2', 300, 60)],
      activities: [activity('A1', 30, { notBefore: 310 })],
    });
    expect(allocate(document, options).floats).toMatchObject([{ slipMinutes: 560 }]);
  });

  it('of outside work goes to its date, however far past the last window, and is not said where nothing ends it', () => {
    const document = plan({
      windows: [window('P1', 0, 600)],
      activities: [
        activity('A1', 60),
        activity('O1', 60, { place: 'outside', after: ['A1'], keyDate: 200 * 1440 }),
        activity('O2', 60, { place: 'outside', after: ['A1'] }),
        activity('O3', 60, { place: 'outside', after: ['O2 + 1440'] }),
      ],
    });
    const found = allocate(document, options);
    expect(found.keyDates).toMatchObject([{ floatMinutes: 200 * 1440 - 120 }]);
    expect(found.floats.map(({ activity: id, slipMinutes }) => [id, slipMinutes])).toEqual([
      ['A1', 540],
      ['O1', 200 * 1440 - 120],
      ['O2', undefined],
      ['O3', undefined],
    ]);
  });
});
