import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../../src/calendar/index.js';
import { fitAll, fitOne, packagesIn } from '../../../../src/planner/fit/index.js';
import type { AccessWindow, Activity, Plan } from '../../../../src/model/index.js';
import { FitCheck } from '../../../../src/verify/index.js';
import { Ledgers } from '../../../../src/verify/usable.js';
import { oracle } from '../../../helpers/oracle.js';
import { left } from '../../../helpers/plain-rules.js';
import { activity, plan, resource, rules, window } from '../../../helpers/plan-builders.js';
import { randomLinePlan } from '../../../helpers/random-line-plan.js';
import { randomPlan, type RandomPlan } from '../../../helpers/random-plan.js';

const cases = Number(process.env['SPARE_CASES'] ?? 60);

/** Whether a way exists that leaves so many usable minutes after each inside activity, for what that needs. */
function canLeave(
  of: Plan,
  at: AccessWindow,
  work: readonly Activity[],
  spare: number,
  step: number,
) {
  const ledgers = new Ledgers(of);
  const activities = work.map((item) => {
    if (item.place === 'outside') return item;
    const { usable } = ledgers.of(at, item);
    const leftAfter = (moment: number): number =>
      usable.reduce((sum, { start, end }) => sum + Math.max(0, end - Math.max(start, moment)), 0);
    let by = at.start - step * MINUTE;
    while (leftAfter(by + step * MINUTE) >= spare * MINUTE && by < at.end) by += step * MINUTE;
    // A package of its own: each has its own date.
    return { ...item, package: item.id, keyDate: Math.min(item.keyDate ?? by, by) };
  });
  const best = oracle({ ...of, windows: [at], activities }, ['key-dates', 'finish'], step);
  return best.unplaced === 0 && best.values['key-dates'] === 0;
}

describe('minutes to spare', () => {
  it('are the most there can be, not those of the first way found', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 300)],
        // In this order the third begins when the first two are over; the other way round it goes beside them.
        activities: [
          activity('A1', 90, { resources: { gang: 1 } }),
          activity('A2', 90, { resources: { gang: 1 } }),
          activity('A3', 180, { resources: { gang: 1 } }),
        ],
        resources: [resource('gang', [{ capacity: 2 }])],
      }),
      'W1',
      'P1',
    );
    expect(verdict).toMatchObject({ fits: true, spareMinutes: 120 });
    expect(verdict.spareAtMost).toBeUndefined();
    expect(Math.max(...verdict.placements.map((placement) => placement.to)) / MINUTE).toBe(180);
  });

  it('are those of the work that has the least left in time of its own', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 480, { isolation: ['S1'] })],
        activities: [
          activity('A1', 60, { isolation: ['S1'], resources: { gang: 1 } }),
          activity('A2', 120, { resources: { gang: 1 } }),
        ],
        resources: [resource('gang', [{ capacity: 1 }])],
        rules: {
          ...rules({ margin: 30 }),
          leadOut: [{ step: 'Take off earths', minutes: 45, when: 'isolation' }],
        },
      }),
      'W1',
      'P1',
    );
    // Isolated work must be over by 405, the other by 450: one after the other, the isolated first.
    expect(verdict.spareMinutes).toBe(270);
    expect(verdict.placements.map((placement) => placement.activity)).toEqual(['A1', 'A2']);
  });

  it('come with a bound where not every way was looked at', () => {
    // Thirty pieces over three gangs: the longest first is not best, and no one can try all ways.
    const minutes = Array.from({ length: 30 }, (_, i) => 31 + ((i * 37) % 60));
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 900)],
        activities: minutes.map((each, i) =>
          activity(`A${i + 1}`, each, { resources: { gang: 1 } }),
        ),
        resources: [resource('gang', [{ capacity: 3 }])],
      }),
      'W1',
      'P1',
    );
    const bound = 900 - Math.ceil(minutes.reduce((a, b) => a + b) / 3);
    expect(verdict.fits).toBe(true);
    expect(verdict.spareAtMost ?? verdict.spareMinutes).toBeLessThanOrEqual(bound);
    expect(verdict.spareMinutes).toBeLessThanOrEqual(verdict.spareAtMost ?? bound);
  });

  it.each<[string, (seed: number) => RandomPlan]>([
    ['plans', randomPlan],
    ['plans with line state and work that goes on alone', randomLinePlan],
  ])(
    `are left as told, and no more can be, in ${cases} random %s`,
    (_, planOf) => {
      let looked = 0;
      let several = 0;
      for (let seed = 1; seed <= cases; seed += 1) {
        const { plan: document, step } = planOf(seed);
        const check = new FitCheck(document);
        for (const verdict of fitAll(document)) {
          if (!verdict.fits) continue;
          const { spareMinutes } = verdict;
          expect({ seed, faults: check.faultsOf(verdict) }).toEqual({ seed, faults: [] });
          const work = packagesIn(document.activities)
            .get(verdict.package)!
            .filter((item) => left(item) > 0);
          if (work.every((item) => item.place === 'outside')) continue;
          const at = document.windows.find((item) => item.id === verdict.window)!;
          const more = canLeave(document, at, work, spareMinutes! + step, step);
          expect({ seed, ...verdict, more }).toEqual({ seed, ...verdict, more: false });
          looked += 1;
          if (verdict.placements.length > 1) several += 1;
        }
      }
      expect(looked).toBeGreaterThan(cases / 4);
      expect(several).toBeGreaterThan(0);
    },
    3_600_000,
  );
});
