import { describe, expect, it } from 'vitest';
import { DAY } from '../../../../src/calendar/index.js';
import {
  fitAll,
  fitOne,
  LedgerCache,
  NO,
  packagesIn,
  quickStates,
} from '../../../../src/planner/fit/index.js';
import type { AccessWindow, Plan } from '../../../../src/model/index.js';
import { randomPlan } from '../../../helpers/random-plan.js';

/** The plan with each of its windows again on later days, clock changes between them. */
function repeated(plan: Plan, days: readonly number[]): Plan {
  const windows = days.flatMap((later) =>
    plan.windows.map((window): AccessWindow => {
      const moved = { start: window.start + later * DAY, end: window.end + later * DAY };
      const isolation = window.isolation.map(({ section, during }) => ({
        section,
        ...(during && {
          during: during.map((each) =>
            'start' in each
              ? { start: each.start + later * DAY, end: each.end + later * DAY }
              : each,
          ),
        }),
      }));
      return { ...window, id: `${window.id}+${later}`, ...moved, isolation };
    }),
  );
  // Work that is fixed to one window would be possible in that one only.
  const activities = plan.activities.map(({ window: _, ...one }) => one);
  return { ...plan, windows, activities };
}

describe('windows that are alike', () => {
  it('have the quick states and the whole verdicts that each has by itself', () => {
    let pairs = 0;
    let yes = 0;
    let no = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const plan = repeated(randomPlan(seed).plan, [-30, -7, 0, 1, 2, 7, 120]);
      const book = new LedgerCache(plan);
      const all = fitAll(plan)[Symbol.iterator]();
      for (const [name, activities] of packagesIn(plan.activities)) {
        const together = quickStates(plan, activities, plan.windows, book);
        plan.windows.forEach((window, at) => {
          const [alone] = quickStates(plan, activities, [window], new LedgerCache(plan));
          expect(together[at]).toBe(alone);
          const verdict = fitOne(plan, name, window.id);
          expect(all.next().value).toEqual(verdict);
          expect(together[at]! >= 0).toBe(verdict.fits);
          if (verdict.fits) expect(together[at]).toBe(verdict.spareMinutes);
          pairs += 1;
          if (together[at]! >= 0) yes += 1;
          else if (together[at] === NO) no += 1;
        });
      }
    }
    expect(yes).toBeGreaterThan(pairs / 20);
    expect(no).toBeGreaterThan(pairs / 20);
  });
});
