import { describe, expect, it } from 'vitest';
import { instantOf, MINUTE } from '../../../../src/calendar/index.js';
import { fitAll, fitOne } from '../../../../src/planner/fit/index.js';
import type { Activity, Link, Plan } from '../../../../src/model/index.js';
import { createRandom } from '../../../../src/planner/random.js';
import { verify } from '../../../../src/verify/index.js';
import { fitsOracle } from '../../../helpers/fits-oracle.js';
import { activity, plan, resource, rules, window } from '../../../helpers/plan-builders.js';

const cases = Number(process.env['FIT_LARGER_CASES'] ?? 40);
const step = 10;
const zone = 'Europe/London';

/** One package of 10 to 14 activities and a window about as long as they take. */
function largePackage(seed: number): Plan {
  const random = createRandom(seed);
  const chance = (percent: number): boolean => random.below(100) < percent;
  // Half of them in the night in which clocks go forward.
  const day = chance(50) ? 28 : 20;
  const start = instantOf({ year: 2026, month: 3, day, hour: 23, minute: 0 }, zone, 'earlier');
  const resources = [
    resource('crane', [{ capacity: 1 }]),
    resource('gang', [
      { capacity: 2 },
      ...(chance(40) ? [{ capacity: 1, from: start / MINUTE + 40, to: start / MINUTE + 100 }] : []),
    ]),
  ];
  const n = 10 + random.below(5);
  const activities = Array.from({ length: n }, (_, i): Activity => {
    const after: Link[] = [];
    for (let j = Math.max(0, i - 4); j < i; j += 1)
      if (chance(18))
        after.push({
          activity: `A${j + 1}`,
          from: chance(80) ? 'finish' : 'start',
          gapMinutes: chance(25) ? step * (1 + random.below(3)) : 0,
        });
    return {
      ...activity(`A${i + 1}`, step * (1 + random.below(3)), {
        ...(chance(12) ? { units: [2, step, chance(50) ? step : 0, 0] as const } : {}),
        resources: {
          ...(chance(45) ? { crane: 1 } : {}),
          ...(chance(60) ? { gang: 1 + random.below(2) } : {}),
        },
        loud: chance(30),
      }),
      after,
      ...(chance(10) ? { notBefore: start + step * random.below(8) * MINUTE } : {}),
      ...(chance(10) ? { keyDate: start + step * (8 + random.below(10)) * MINUTE } : {}),
    };
  });
  // As long as the busier resource needs, and a little less or more.
  const minutes = (name: string, capacity: number): number =>
    activities.reduce((sum, item) => {
      const amount = item.resources.find((need) => need.resource === name)?.amount ?? 0;
      const its =
        item.work.kind === 'whole' ? item.work.minutes : 2 * step + item.work.setUpMinutes;
      return sum + (amount * its) / capacity;
    }, 0);
  const busy = Math.max(minutes('crane', 1), minutes('gang', 2));
  const length = Math.max(4, Math.ceil(busy / step) - 1 + random.below(5));
  return plan({
    zone,
    windows: [
      {
        id: 'P1',
        title: '',
        start,
        end: start + length * step * MINUTE,
        zone,
        lines: [],
        isolation: [],
        status: 'confirmed',
        trainsAfter: '',
      },
    ],
    activities,
    resources,
    rules: rules({
      curfews: chance(30) ? [{ name: 'Quiet', bars: 'loud', from: '23:30', to: '00:00' }] : [],
    }),
  });
}

/** Loud work in a window that a curfew cuts once a day into stretches of 100 minutes, and nothing may be idle. */
function packing(minutes: readonly number[], days: number): Plan {
  return plan({
    windows: [window('P1', 0, (days - 1) * 1440 + 100)],
    activities: minutes.map((each, i) =>
      activity(`A${i + 1}`, each, { loud: true, resources: { crane: 1 } }),
    ),
    resources: [resource('crane', [{ capacity: 1 }])],
    rules: rules({ curfews: [{ name: 'Quiet', bars: 'loud', from: '01:40', to: '00:00' }] }),
  });
}

describe('fitOne of a package too large to try every order of', () => {
  // Three by three they fill eight stretches to the minute.
  const filling = Array.from({ length: 8 }, (_, i) => [27 + i, 33, 40 - i]).flat();

  it('finds the way where there is one', () => {
    const verdict = fitOne(packing(filling, 8), 'W1', 'P1');
    expect(verdict).toMatchObject({ fits: true, reasons: [] });
    expect(verdict.proven).toBeUndefined();
  });

  it('proves a no by the minutes of the crane', () => {
    const verdict = fitOne(packing([...filling, 1], 8), 'W1', 'P1');
    expect(verdict).toMatchObject({ fits: false });
    expect(verdict.proven).toBeUndefined();
    expect(verdict.reasons.map((reason) => reason.code)).not.toContain('not-shown');
  });

  it('does not say that it cannot be done where nobody has shown it', () => {
    // Enough minutes altogether, each piece short enough, and far more ways to share them out than can be tried.
    const odd = Array.from({ length: 24 }, (_, i) => 2 * (13 + ((i * 5) % 8)) + (i < 8 ? 1 : 0));
    const verdict = fitOne(packing(odd, Math.ceil(odd.reduce((a, b) => a + b) / 100)), 'W1', 'P1');
    expect(verdict).toMatchObject({ fits: false, proven: false });
    expect(verdict.reasons[0]).toMatchObject({ code: 'not-shown' });
    expect(verdict.reasons[0]!.text).toContain('not shown to fit P1');
  });
});

describe('fitAll of packages of 10 to 14 activities', () => {
  it(`says yes and no as a search step by step does in ${cases} random packages`, () => {
    const counts = { yes: 0, no: 0, open: 0 };
    for (let seed = 1; seed <= cases; seed += 1) {
      const document = largePackage(seed);
      const [verdict] = fitAll(document);
      if (verdict!.fits) {
        counts.yes += 1;
        expect({ seed, faults: verify(document, { placements: verdict!.placements }) }).toEqual({
          seed,
          faults: [],
        });
      } else if (verdict!.proven === false) counts.open += 1;
      else {
        counts.no += 1;
        const fits = fitsOracle(document, document.windows[0]!, document.activities, step);
        expect({ seed, fits }).toEqual({ seed, fits: false });
      }
    }
    if (process.env['SHOW']) console.log(counts);
    expect(counts.yes).toBeGreaterThan(cases / 6);
    expect(counts.no).toBeGreaterThan(cases / 6);
    expect(counts.open).toBeLessThanOrEqual(cases / 50);
  });
});
