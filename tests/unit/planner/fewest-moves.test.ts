import { describe, expect, it } from 'vitest';
import type { Placement } from '../../../src/planner/fit/index.js';
import type { Plan } from '../../../src/model/index.js';
import { allocate, replan, verify } from '../../../src/planner/search/index.js';
import { createRandom, type Random } from '../../../src/planner/kernels/random.js';
import { oracle } from '../../helpers/oracle.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';

const cases = Number(process.env['MOVE_CASES'] ?? 80);
const options = { seconds: 5, clock: (): number => performance.now() };
const order = ['key-dates', 'finish', 'fewest-windows'] as const;

/** The plan with one of its windows withdrawn. */
function changed(document: Plan, random: Random): Plan {
  const which = random.below(document.windows.length);
  return {
    ...document,
    windows: document.windows.map((one, i) =>
      i === which ? { ...one, status: 'withdrawn' } : one,
    ),
  };
}

describe('replan', () => {
  it('proves that only what has to move does', () => {
    const crane = resource('crane', [{ capacity: 1 }]);
    const on = { resources: { crane: 1 } };
    const document = plan({
      windows: [window('P1', 0, 100), window('P2', 1440, 300), window('P3', 2880, 100)],
      activities: [
        activity('A1', 100, { ...on, package: 'W1', keyDate: 100 }),
        activity('B1', 100, { ...on, package: 'W2' }),
        activity('C1', 100, { ...on, package: 'W3' }),
        activity('D1', 100, { ...on, package: 'W4' }),
      ],
      resources: [crane],
    });
    const before = allocate(document, options);
    const cut = {
      ...document,
      windows: document.windows.map((one) =>
        one.id === 'P1' ? { ...one, status: 'withdrawn' as const } : one,
      ),
    };
    const after = replan(cut, before, options);
    // P2 holds the other three: W1 is least late where one of them makes room for it.
    expect(after.packagesMoved).toContain('W1');
    expect(after.packagesMoved).toHaveLength(2);
    expect(after.fewest).toEqual({ atLeast: 2, proven: true });
  });

  it('moves what waits where there is no room left before it', () => {
    const document = plan({
      windows: [window('P1', 0, 100), window('P2', 1440, 100), window('P3', 2880, 100)],
      activities: [
        activity('A1', 100, { package: 'W1' }),
        activity('B1', 100, { package: 'W2', after: ['A1'] }),
      ],
    });
    const before = allocate(document, options);
    const cut = {
      ...document,
      windows: document.windows.map((one) =>
        one.id === 'P1' ? { ...one, status: 'withdrawn' as const } : one,
      ),
    };
    const after = replan(cut, before, options);
    expect(after.allocation.certificate.verified).toBe(true);
    expect(after.allocation.placements.map((one) => [one.activity, one.window])).toEqual([
      ['A1', 'P2'],
      ['B1', 'P3'],
    ]);
    expect(after.fewest).toEqual({ atLeast: 2, proven: true });
  });

  it(`moves no more packages than trying every choice of them does, in ${cases} random plans`, () => {
    let moved = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const random = createRandom(seed + 90_000);
      const { plan: drawn, step } = randomPlan(seed + 60_000);
      const document = {
        ...drawn,
        activities: drawn.activities.map((one) => ({ ...one, package: one.id })),
      };
      const before = allocate(document, options);
      const now = changed(document, random);
      if (now.windows.every((one) => one.status === 'withdrawn')) continue;
      const after = replan(now, before, options);
      expect(verify(now, after.allocation.placements)).toEqual([]);
      const known = before.placements;
      const gone = new Set(
        known
          .filter((one) => !after.allocation.placements.some((each) => same(each, one)))
          .map((one) => one.activity),
      );
      const target = oracle(now, order, step);
      const fewest = fewestByTrying(now, step, known, target);
      expect({ seed, moved: gone.size, ...after.fewest }).toEqual({
        seed,
        moved: fewest,
        atLeast: fewest,
        proven: true,
      });
      if (fewest > 0) moved += 1;
    }
    expect(moved).toBeGreaterThan(cases / 5);
  }, 300_000);
});

function same(a: Placement, b: Placement): boolean {
  return a.activity === b.activity && a.window === b.window && a.from === b.from && a.to === b.to;
}

/** Fewest activities that have to move for as much to be placed and dates to be met as well as at all possible. */
function fewestByTrying(
  now: Plan,
  step: number,
  known: readonly Placement[],
  target: ReturnType<typeof oracle>,
): number {
  const ids = [...new Set(known.map((one) => one.activity))];
  let fewest = ids.length;
  for (let mask = 0; mask < 1 << ids.length; mask += 1) {
    const moving = ids.filter((_, i) => mask & (1 << i));
    if (moving.length >= fewest) continue;
    const keep = known.filter((one) => !moving.includes(one.activity));
    if (verify(now, keep).some((fault) => fault.code !== 'link')) continue;
    const best = bestWith(now, step, keep);
    if (!best || best.unplaced > target.unplaced) continue;
    if (best.values['key-dates'] <= target.values['key-dates']) fewest = moving.length;
  }
  return fewest;
}

/** The best with what stays; `undefined` where nothing holds with it. */
function bestWith(
  now: Plan,
  step: number,
  keep: readonly Placement[],
): ReturnType<typeof oracle> | undefined {
  try {
    return oracle(now, order, step, undefined, keep);
  } catch {
    return undefined;
  }
}
