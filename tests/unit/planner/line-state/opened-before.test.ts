import { describe, expect, it } from 'vitest';
import type { Activity, Plan } from '../../../../src/model/index.js';
import { fitOne } from '../../../../src/planner/fit/index.js';
import { allocate, leftOpenIn, replan } from '../../../../src/planner/search/index.js';
import { verify } from '../../../../src/verify/index.js';
import { lineFaults } from '../../../helpers/line-check.js';
import { activity, plan, window } from '../../../helpers/plan-builders.js';
import { randomLinePlan } from '../../../helpers/random-line-plan.js';

const cases = Number(process.env['LINE_CASES'] ?? 200);
const options = { effort: 0.01, clock: () => 0 };

const fourDone: Activity['work'] = {
  kind: 'units',
  units: 4,
  done: 4,
  minutesPerUnit: 30,
  setUpMinutes: 0,
  makeSafeMinutes: 0,
};

/** A track lifted out in an earlier shift, relaid in 100 minutes and tamped in 100. */
const lifted = (minutes: readonly number[]): Plan =>
  plan({
    windows: minutes.map((each, k) => window(`W${k + 1}`, 1440 * (k + 1), each)),
    activities: [
      { ...activity('LIFT', 0), work: fourDone, madeGoodBy: ['TAMP'] },
      activity('RELAY', 100, { after: ['LIFT'] }),
      activity('TAMP', 100, { after: ['RELAY'] }),
    ],
  });

describe('what was opened in an earlier shift', () => {
  it('is made good in one window, or what makes it good is not begun there', () => {
    const found = allocate(lifted([120, 200, 120]), options);
    expect(found.placements.map((placement) => [placement.activity, placement.window])).toEqual([
      ['RELAY', 'W2'],
      ['TAMP', 'W2'],
    ]);
    const short = allocate(lifted([120, 170]), options);
    expect(short.placements).toEqual([]);
    expect(short.unplaced[0]!.reasons[0]!.text).toBe(
      'RELAY and TAMP, which make good what was done before, cannot all be finished in W2: short by 30 min',
    );
  });

  it('is made good whole in a fit too, whichever of the packages that make it good is asked about', () => {
    const [lift, relay, tamp] = lifted([200]).activities;
    const across = (minutes: number): Plan => ({
      ...lifted([minutes]),
      activities: [
        { ...lift!, package: 'Lift' },
        { ...relay!, package: 'Relay' },
        { ...tamp!, package: 'Tamp' },
      ],
    });
    // Relaying and tamping take 200 minutes: alone each would go into 120.
    for (const name of ['Relay', 'Tamp']) {
      expect(fitOne(across(120), name, 'W1').fits).toBe(false);
      const { fits, placements } = fitOne(across(200), name, 'W1');
      expect([fits, placements.map((placement) => placement.activity)]).toEqual([
        true,
        ['RELAY', 'TAMP'],
      ]);
    }
  });

  it('is a fault where a plan parts what makes it good, to the planner and to the check', () => {
    const one = lifted([120, 200, 120]);
    const { placements } = allocate(one, options);
    const parted = placements.map((each) =>
      each.activity === 'TAMP'
        ? { ...each, window: 'W3', from: each.from + 1440 * 60_000, to: each.to + 1440 * 60_000 }
        : each,
    );
    expect(leftOpenIn(one, parted).map((each) => each.activity)).toEqual(['LIFT']);
    expect(verify(one, { placements: parted }).map((each) => each.code)).toContain('not-made-good');
    expect(lineFaults(one, parted)).toHaveLength(1);
  });

  it(`is kept in random plans of which openers are done: planned and mended`, () => {
    let opened = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: made } = randomLinePlan(seed);
      const opener = made.activities.find(
        (item) => Array.isArray(item.madeGoodBy) && item.place === 'inside',
      );
      if (!opener) continue;
      const done: Activity = {
        ...opener,
        work: {
          kind: 'units',
          units: 2,
          done: 2,
          minutesPerUnit: 10,
          setUpMinutes: 0,
          makeSafeMinutes: 0,
        },
      };
      const one: Plan = {
        ...made,
        activities: made.activities.map((each) => (each === opener ? done : each)),
      };
      const found = allocate(one, options);
      expect({ seed, faults: lineFaults(one, found.placements) }).toEqual({ seed, faults: [] });
      expect({ seed, faults: verify(one, { placements: found.placements }) }).toEqual({
        seed,
        faults: [],
      });
      const gone = one.windows[seed % one.windows.length]!;
      const cut: Plan = {
        ...one,
        windows: one.windows.map((each) =>
          each === gone ? { ...each, status: 'withdrawn' } : each,
        ),
      };
      const { placements } = replan(cut, found, options).allocation;
      expect({ seed, faults: lineFaults(cut, placements) }).toEqual({ seed, faults: [] });
      opened += 1;
    }
    expect(opened).toBeGreaterThan(cases / 10);
  });
});
