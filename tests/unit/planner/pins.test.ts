import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Placement } from '../../../src/planner/fit/index.js';
import type { Plan } from '../../../src/model/index.js';
import { createRandom, type Random } from '../../../src/planner/random.js';
import { allocate, type Objective } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { objectiveOrder } from '../../../src/planner/search/objectives.js';
import { oracle } from '../../helpers/oracle.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { processorMs } from '../../helpers/processor-clock.js';

const cases = Number(process.env['PIN_CASES'] ?? 50);
const firsts: readonly (Objective | undefined)[] = [undefined, 'finish', 'fewest-windows'];
const clock = processorMs;

/** The plan with more repeated work than most. */
function repeated(document: Plan, step: number, random: Random): Plan {
  return {
    ...document,
    activities: document.activities.map((item) =>
      random.below(2) === 0
        ? item
        : {
            ...item,
            work: {
              kind: 'units',
              units: 2 + random.below(2),
              done: 0,
              minutesPerUnit: step,
              setUpMinutes: 0,
              makeSafeMinutes: random.below(2) * step,
            },
          },
    ),
  };
}

/** The plan with work held back, so that what comes of it leaves gaps. */
function heldBack(document: Plan, step: number, random: Random): Plan {
  const base = Math.min(...document.windows.map((item) => item.start));
  return {
    ...document,
    activities: document.activities.map((item) =>
      random.below(2) === 0
        ? item
        : {
            ...item,
            notBefore: Math.max(item.notBefore ?? base, base + random.below(16) * step * MINUTE),
          },
    ),
  };
}

/**
 * Some visits of a plan that breaks nothing, now and then with units left out. Whatever is kept, what it waits for can
 * be placed: the plan itself does so.
 */
function somePins(document: Plan, placements: readonly Placement[], random: Random): Placement[] {
  return placements.flatMap((placement): Placement[] => {
    if (random.below(2) === 0) return [];
    const { work } = document.activities.find((each) => each.id === placement.activity)!;
    if (work.kind === 'whole' || placement.units === 1 || random.below(2) === 0) return [placement];
    // A visit in two would pay these again, and might not have the time.
    if (work.setUpMinutes + work.makeSafeMinutes > 0) return [placement];
    const units = 1 + random.below(placement.units! - 1);
    const minutes = units * work.minutesPerUnit * MINUTE;
    return random.below(2) === 0
      ? [{ ...placement, units, to: placement.from + minutes }]
      : [{ ...placement, units, from: placement.to - minutes }];
  });
}

describe('allocate with placements that stay', () => {
  const crane = resource('crane', [{ capacity: 1 }]);
  const onCrane = { resources: { crane: 1 } };

  it('does first what something that stays waits for, at second hand too', () => {
    const document = plan({
      windows: [window('P1', 0, 160), window('P2', 1440, 160), window('P3', 2880, 160)],
      activities: [
        activity('A1', 0, { ...onCrane, units: [3, 40, 0, 0] }),
        activity('A2', 40, { after: ['A1'] }),
        activity('A3', 60, { after: ['A2'] }),
        // On time only where the rest of A1 has to go.
        activity('B1', 160, { ...onCrane, keyDate: 160, package: 'W2' }),
      ],
      resources: [crane],
    });
    const keep = [{ activity: 'A3', window: 'P2', from: 1440 * MINUTE, to: 1500 * MINUTE }];
    const found = allocate(document, { seconds: 1, clock, keep });
    expect(found.certificate).toMatchObject({ holds: true });
    expect(found.unplaced).toEqual([]);
    expect(found.placements.filter((placement) => placement.window === 'P1')).toHaveLength(2);
  });

  it('says so where what waits stays and there is no room before it', () => {
    const document = plan({
      windows: [window('P1', 0, 60), window('P2', 1440, 200)],
      activities: [activity('A1', 80), activity('A2', 40, { after: ['A1'] })],
    });
    const keep = [{ activity: 'A2', window: 'P2', from: 1440 * MINUTE, to: 1480 * MINUTE }];
    const found = allocate(document, { seconds: 1, clock, keep });
    expect(found.unplaced).toMatchObject([{ activity: 'A1' }]);
    expect(found.unplaced[0]!.reasons.map((reason) => reason.code)).toContain('needed-before');
    expect(found.certificate.holds).toBe(false);
  });

  it('places what is left of repeated work before the visits that stay, and tells what is left of it', () => {
    const document = plan({
      windows: [window('P1', 0, 60), window('P2', 1440, 60)],
      activities: [activity('A1', 0, { units: [3, 40, 0, 0] })],
    });
    const keep = [
      { activity: 'A1', window: 'P2', from: 1440 * MINUTE, to: 1480 * MINUTE, units: 1 },
    ];
    const found = allocate(document, { seconds: 1, clock, keep });
    expect(found.placements).toEqual([
      { activity: 'A1', window: 'P1', from: 0, to: 40 * MINUTE, units: 1 },
      ...keep,
    ]);
    expect(found.unplaced.map((item) => item.activity)).toEqual(['A1']);
    expect(found.certificate).toMatchObject({ holds: true });
  });

  it(
    'breaks nothing and places no less than is known to be possible, in random plans',
    () => {
      let partly = 0;
      for (let seed = 1; seed <= cases; seed += 1) {
        const random = createRandom(seed + 70_000);
        const { plan: drawn, step } = randomPlan(seed);
        const document = repeated(drawn, step, random);
        const first = firsts[seed % firsts.length];
        const goal = { ...(first ? { first } : {}), seconds: 5, clock };
        const before = allocate(heldBack(document, step, random), {
          ...goal,
          first: firsts[random.below(3)] ?? 'key-dates',
        });
        const keep = somePins(document, before.placements, random);
        const found = allocate(document, { ...goal, keep });
        expect({ seed, keep, faults: verify(document, { placements: found.placements }) }).toEqual({
          seed,
          keep,
          faults: [],
        });
        for (const placement of keep) expect(found.placements).toContainEqual(placement);
        expect({ seed, most: found.unplaced.length <= before.unplaced.length }).toEqual({
          seed,
          most: true,
        });
        const best = oracle(document, objectiveOrder(first), step, found.placements, keep);
        const values = Object.fromEntries(
          found.certificate.objectives
            .filter((each) => each.name !== 'margins')
            .map((each) => [each.name, each.value]),
        );
        expect({ seed, unplaced: found.unplaced.length, values }).toEqual({
          seed,
          unplaced: best.unplaced,
          values: best.values,
        });
        for (const each of found.certificate.objectives)
          expect({ seed, ...each, low: each.lowerBound <= each.value }).toMatchObject({
            low: true,
          });
        // With work held in place only what no plan at all beats is proven.
        const free = allocate(document, goal);
        if (found.certificate.proven && free.unplaced.length === found.unplaced.length)
          expect({ seed, best: free.certificate.objective }).toEqual({
            seed,
            best: found.certificate.objective,
          });
        if (keep.some((placement) => (placement.units ?? 1) < 2)) partly += 1;
      }
      expect(partly).toBeGreaterThan(cases / 20);
    },
    4_000 * cases,
  );
});
