import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../../src/calendar/index.js';
import { fitAll, fitOne } from '../../../../src/planner/fit/index.js';
import type { Plan } from '../../../../src/model/index.js';
import { createRandom } from '../../../../src/planner/random.js';
import { activity, plan, resource, window } from '../../../helpers/plan-builders.js';
import { randomPlan } from '../../../helpers/random-plan.js';

const cases = Number(process.env['LATER_CASES'] ?? 40);

/** The plan with one window so much longer. */
const longer = (of: Plan, id: string, minutes: number): Plan => ({
  ...of,
  windows: of.windows.map((item) =>
    item.id === id ? { ...item, end: item.end + minutes * MINUTE } : item,
  ),
});

describe('a later end', () => {
  it('is the least, though the window just longer loses time to a changeover', () => {
    // 11 h 50 of a window with shifts of 12 h: 10 minutes more end with the shift; past that a changeover takes 30.
    const document: Plan = {
      ...plan({
        windows: [window('P1', 0, 710)],
        activities: [activity('A1', 716)],
      }),
    };
    const withShifts: Plan = {
      ...document,
      rules: {
        ...document.rules,
        shifts: { longestMinutes: 720, restMinutes: 660, changeoverMinutes: 30 },
      },
    };
    const verdict = fitOne(withShifts, 'W1', 'P1');
    expect(verdict).toMatchObject({ fits: false, spareMinutes: -6 });
    expect(verdict.reasons.find((reason) => reason.code === 'too-short')!.atMost).toBeUndefined();
    expect(fitOne(longer(withShifts, 'P1', 6), 'W1', 'P1').fits).toBe(true);
    expect(fitOne(longer(withShifts, 'P1', 11), 'W1', 'P1').fits).toBe(false);
  });

  it('leaves a minute for what takes no time', () => {
    // Loud work is barred until 07:00: a window that then ends has no loud time, if of no length.
    const curfews = [{ name: 'Night', bars: 'loud' as const, from: '23:00', to: '07:00' }];
    const document = plan({
      windows: [window('P1', 0, 400)],
      activities: [activity('A1', 0, { loud: true })],
      rules: { ...plan().rules, curfews },
    });
    expect(fitOne(document, 'W1', 'P1')).toMatchObject({ fits: false, spareMinutes: -21 });
    expect(fitOne(longer(document, 'P1', 20), 'W1', 'P1').fits).toBe(false);
    expect(fitOne(longer(document, 'P1', 21), 'W1', 'P1').fits).toBe(true);
  });

  it('is not told to be none where only a bounded time was looked at', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 100)],
        activities: [activity('A1', 60, { resources: { crane: 1 } }), activity('A2', 120)],
        resources: [resource('crane', [{ capacity: 1, from: 90 * 1440 }])],
      }),
      'W1',
      'P1',
    );
    expect(verdict.spareMinutes).toBeNull();
    expect(verdict.reasons.map((reason) => reason.text).join(' ')).not.toContain('no later end');
  });

  it(`does, and no less does, in ${cases} random plans with shifts`, () => {
    let looked = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: plain, step } = randomPlan(seed);
      const random = createRandom(seed);
      const shifts = {
        longestMinutes: step * (4 + random.below(5)),
        restMinutes: 660,
        changeoverMinutes: step,
      };
      const document = { ...plain, rules: { ...plain.rules, shifts } };
      for (const { package: name, window: id, spareMinutes, reasons } of fitAll(document)) {
        if (spareMinutes === null || spareMinutes >= 0) continue;
        expect(reasons.every((reason) => reason.atMost === undefined)).toBe(true);
        const fits = (minutes: number): boolean =>
          fitOne(longer(document, id, minutes), name, id).fits;
        const by = -spareMinutes;
        expect({ seed, id, by, fits: fits(by) }).toEqual({ seed, id, by, fits: true });
        // Every length below it, not the one before alone: more is not always better.
        for (let less = 0; less < by; less += step)
          expect({ seed, id, less, fits: fits(less) }).toEqual({ seed, id, less, fits: false });
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(cases / 4);
  });
});
