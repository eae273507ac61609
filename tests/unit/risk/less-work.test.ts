import { describe, expect, it } from 'vitest';
import { handbackNetwork } from '../../../src/risk/handback-network/handback-network.js';
import { chancesWithout, unitCounts, type LessWork } from '../../../src/risk/shift/less-work.js';
import { chanceOf } from '../../../src/risk/kernel/simulation.js';
import { anActivity, aPlan, aWindow, placed, whole } from '../../helpers/handback-plan.js';

describe('the chance with less of the work', () => {
  const window = aWindow();
  const plan = aPlan([
    anActivity('CUT', whole(120, 100, 180)),
    anActivity('LIFT', whole(90, 80, 150)),
  ]);
  const built = handbackNetwork(plan, window, [placed('CUT', 30, 150), placed('LIFT', 150, 240)], {
    seed: 5,
    runs: 2000,
  });
  const dropped = built.network.nodes.map((_, index) => new Set([index]));
  const asked = (own: number, ownRuns: number): LessWork => ({
    seed: 5,
    runs: 2000,
    confidence: 0.95,
    own: chanceOf(own, ownRuns),
    ownRuns,
  });

  it('is certain without a run where all of the work was on time in as many', () => {
    // Fewer runs are known than are asked for, so that each is walked through.
    const walked = chancesWithout(built, window, asked(100, 100), dropped);
    expect(chancesWithout(built, window, asked(2000, 2000), dropped)).toEqual(walked);
    expect(walked.every(({ probability }) => probability === 1)).toBe(true);
  });

  it('is walked through where one run was late', () => {
    const early = { ...window, end: window.end - 240 * 60_000 };
    const found = chancesWithout(built, early, asked(1999, 2000), dropped);
    expect(found.some(({ probability }) => probability < 1)).toBe(true);
  });

  it('is asked from the units that are begun, one that is only taken to be under way left aside', () => {
    const units = { kind: 'units', units: 6, done: 0, minutesPerUnit: 20 } as const;
    const work = { ...units, setUpMinutes: 10, makeSafeMinutes: 5 };
    const repeated = handbackNetwork(
      aPlan([anActivity('SLEEPERS', work)]),
      window,
      [placed('SLEEPERS', 30, 165, 6)],
      { seed: 5, runs: 50 },
    );
    const ofUnit = (index: number): number => repeated.meanings[index]!.unit ?? 0;
    const states = repeated.meanings.map(({ part, unit = 0 }) =>
      part !== 'unit' || unit > 3 ? 'to-come' : unit === 3 ? 'begun' : 'done',
    );
    const assumed = new Set([...states.keys()].filter((index) => ofUnit(index) === 3));
    expect(unitCounts(repeated, states, assumed).map((count) => count.units)).toEqual([
      2, 3, 4, 5, 6,
    ]);
  });
});
