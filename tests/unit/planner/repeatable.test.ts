import { describe, expect, it } from 'vitest';
import { families, planOfFamily } from '../../../bench/plans/families.js';
import type { Plan } from '../../../src/model/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { compareScores } from '../../../src/planner/fit/index.js';
import { allocate, type Allocation } from '../../../src/planner/search/index.js';
import { preparedOf } from '../../../src/planner/search/allocate.js';
import { verify } from '../../../src/verify/index.js';
import { GOLDEN_PLANS, goldenPlans } from '../../helpers/plan-golden.js';

const plan = planOfFamily(families['B']!, 2);
const effort = 0.05;

/** A clock on which an hour passes between two looks. */
function racing(): () => number {
  let now = 0;
  return () => (now += 3_600_000);
}

/** The plan with its rows, and the links and needs in them, in another order. */
function shuffled(of: Plan, seed: number): Plan {
  const random = createRandom(seed);
  const mixed = <T>(list: readonly T[]): T[] =>
    list
      .map((each) => ({ each, at: random.next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ each }) => each);
  return {
    ...of,
    windows: mixed(of.windows),
    resources: mixed(of.resources),
    activities: mixed(of.activities).map((activity) => ({
      ...activity,
      after: mixed(activity.after),
      resources: mixed(activity.resources),
    })),
  };
}

describe('a plan made twice', () => {
  const once = allocate(plan, { effort, clock: () => performance.now() });

  it('is the same whatever the clock does', () => {
    expect(allocate(plan, { effort, clock: racing() })).toEqual(once);
    expect(once.certificate.cutShort).toBe(false);
    expect(once.notes.map((note) => note.code)).not.toContain('seconds-cut-short');
  });

  it('is the same whatever the order of the rows', () => {
    for (const seed of [1, 2]) {
      const other = allocate(shuffled(plan, seed), { effort, clock: racing() });
      expect(other.placements).toEqual(once.placements);
      expect(other.certificate).toEqual(once.certificate);
    }
  });
});

// The same sum is asked for in tests/browser/plan-bits.test.ts.
it('makes plans of the same bytes on every machine and in a browser', () => {
  expect(goldenPlans()).toBe(GOLDEN_PLANS);
});

describe('a search that is given seconds', () => {
  const stepsIn = (seconds?: number): number =>
    preparedOf(plan, { clock: () => 0, ...(seconds !== undefined && { seconds }) }).problem.effort
      .limit;

  it('does the usual work in few, and more in more', () => {
    expect(stepsIn(1)).toBe(stepsIn());
    expect(stepsIn(60)).toBeGreaterThan(4 * stepsIn());
    expect(stepsIn(600)).toBeGreaterThan(9 * stepsIn(60));
  });

  it('comes to no less in more, and to a plan that holds', () => {
    for (const [family, seed] of [
      ['B', 6],
      ['E', 2],
      ['E', 4],
    ] as const) {
      const given = planOfFamily(families[family]!, seed);
      // A twentieth of the usual steps first, then some again.
      const [some, more] = [0, 1].map((seconds) =>
        allocate(given, { effort: 0.05, clock: () => 0, seconds }),
      );
      const values = ({ unplaced, certificate }: Allocation): number[] => [
        unplaced.length,
        ...certificate.objectives.map(({ value }) => value),
      ];
      expect(compareScores(values(more!), values(some!))).toBeLessThanOrEqual(0);
      expect(verify(given, more!)).toEqual([]);
    }
  });

  it('ends when they are over', () => {
    let now = 0;
    const found = allocate(plan, { seconds: 0.1, clock: () => (now += 1) });
    expect(found.certificate.cutShort).toBe(true);
    expect(now).toBeLessThan(200);
  });
});

describe('a search that is cut short', () => {
  it('keeps the time free at its end that all takes which comes after it', () => {
    // A clock on which a look takes a millisecond, and what is done with the answer 40.
    let now = 0;
    const seconds = 0.2;
    allocate(plan, {
      seconds,
      clock: () => (now += 1),
      rehearse: () => void (now += 40),
    });
    expect(now + 40).toBeLessThan(1000 * seconds * 1.1);
  });

  it('answers with a plan that holds, and says so', () => {
    const found = allocate(plan, { seconds: 1e-9, clock: racing() });
    expect(found.certificate.cutShort).toBe(true);
    expect(verify(plan, found)).toEqual([]);
    expect(found.notes.map((note) => note.code)).toContain('seconds-cut-short');
  });

  // A slip in the year of one window's end makes it 172 years long, with a curfew every night.
  it('ends though a window is 172 years long', () => {
    const [first, ...others] = plan.windows;
    const slipped: Plan = {
      ...plan,
      windows: [{ ...first!, end: first!.end + 172 * 365.25 * 86_400_000 }, ...others],
      rules: {
        ...plan.rules,
        curfews: [{ name: 'Quiet', bars: 'all', from: '23:00', to: '01:00' }],
      },
    };
    const found = allocate(slipped, { seconds: 0.1, clock: () => performance.now() });
    // Sweeping so long a window minute by minute is not for a check; such a window is refused where it is read.
    expect(found.floats.length + found.unplaced.length).toBe(slipped.activities.length);
  });
});
