import { describe, expect, it } from 'vitest';
import { fitOne, LedgerCache, packagesIn } from '../../../../src/planner/fit/index.js';
import { outlasts } from '../../../../src/planner/problem/outlasts.js';
import { fitsOracle } from '../../../helpers/fits-oracle.js';
import { activity, plan, window } from '../../../helpers/plan-builders.js';
import { randomPlan } from '../../../helpers/random-plan.js';

describe('work that outlasts a window', () => {
  const row = (last: number) =>
    plan({
      windows: [window('W', 0, 240)],
      activities: [activity('A', 100), activity('B', last, { after: ['A + 20'] })],
    });
  const isSaid = (document: ReturnType<typeof row>): boolean => {
    const book = new LedgerCache(document);
    return outlasts(book.skeleton(document.activities), document.windows[0]!, 0, book);
  };

  it('is that of which the longest chain, gaps with it, takes a minute more than there is', () => {
    const { activities } = row(120);
    expect(isSaid(row(120))).toBe(false);
    expect(fitOne(row(120), activities[0]!.package, 'W').spareMinutes).toBe(0);
    expect(isSaid(row(121))).toBe(true);
    expect(fitOne(row(121), activities[0]!.package, 'W').spareMinutes).toBe(-1);
  });

  it('is never work that a search step by step finds a place for', () => {
    let said = 0;
    let fitting = 0;
    for (let seed = 1; seed <= 400; seed += 1) {
      const { plan: document, step } = randomPlan(seed);
      const book = new LedgerCache(document);
      for (const activities of packagesIn(document.activities).values()) {
        if (activities.some(({ place }) => place === 'outside')) continue;
        for (const one of document.windows) {
          const fits = fitsOracle(document, one, activities, step);
          const isOut = outlasts(book.skeleton(activities), one, 0, book);
          if (fits) expect(isOut).toBe(false);
          fitting += Number(fits);
          said += Number(isOut);
        }
      }
    }
    expect(said).toBeGreaterThan(50);
    expect(fitting).toBeGreaterThan(50);
  });
});
