import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../src/model/index.js';
import { fitAll } from '../../../../src/planner/fit/index.js';
import { allocate, replan, shortNotice } from '../../../../src/planner/search/index.js';
import { lineFaults } from '../../../helpers/line-check.js';
import { randomLinePlan } from '../../../helpers/random-line-plan.js';

const cases = Number(process.env['LINE_CASES'] ?? 80);
const options = { effort: 0.01, clock: () => 0 };

describe('the line and places taken alone, by a check that shares no code', () => {
  it(`are kept in ${cases} random plans: planned, mended, at short notice, package by package`, () => {
    let opened = 0;
    let moved = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan } = randomLinePlan(seed);
      const good = (item: Plan, placements: Parameters<typeof lineFaults>[1], what: string): void =>
        expect({ seed, what, faults: lineFaults(item, placements) }).toEqual({
          seed,
          what,
          faults: [],
        });
      const found = allocate(plan, options);
      good(plan, found.placements, 'allocate');
      opened += plan.activities.filter(
        (activity) =>
          Array.isArray(activity.madeGoodBy) &&
          found.placements.some((each) => each.activity === activity.id),
      ).length;

      const used = plan.windows.filter((window) =>
        found.placements.some((each) => each.window === window.id),
      );
      const gone = used[seed % Math.max(1, used.length)];
      const cut: Plan = {
        ...plan,
        windows: plan.windows.map((window) =>
          window !== gone
            ? window
            : seed % 2 === 0
              ? { ...window, status: 'withdrawn' }
              : { ...window, end: window.end - 30 * 60_000 },
        ),
      };
      const mended = replan(cut, found, options);
      good(cut, mended.allocation.placements, 'replan');
      moved += mended.moved.length;

      const first = plan.windows[0]!;
      const offered = { ...first, id: 'OFFERED', start: first.start + 60 * 60_000 };
      const more: Plan = { ...plan, windows: [...plan.windows, offered] };
      good(more, shortNotice(plan, found, offered, options).allocation.placements, 'short notice');

      for (const fit of fitAll(plan))
        if (fit.fits) good(plan, fit.placements, `${fit.package} in ${fit.window}`);
    }
    expect(opened).toBeGreaterThan(cases / 20);
    expect(moved).toBeGreaterThan(cases / 20);
  });
});
