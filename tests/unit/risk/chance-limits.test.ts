import { describe, expect, it } from 'vitest';
import { constant, threePoint, type RiskNetwork } from '../../../src/risk/index.js';
import { chanceLimits } from '../../../src/risk/limits/chance-limits.js';

describe('how late work may start for what follows to be over in time', () => {
  it('keeps the minutes free that are asked for after a finish', () => {
    const network: RiskNetwork = {
      nodes: [
        { id: 'CUT', duration: constant(60), after: [] },
        {
          id: 'LIFT',
          duration: constant(30),
          after: [{ node: 0, from: 'finish', lagMinutes: 0 }],
        },
      ],
    };
    const found = chanceLimits(
      network,
      {
        runs: 20,
        seed: 1,
        deadlineMinutes: 200,
        chance: 0.9,
        after: (index) => (index === 1 ? 20 : 0),
      },
      [[0], [1]],
    );
    // By hand: 200 - 20 - 30, and 60 before that.
    expect(found.get(1)).toEqual({ start: 150, errorMinutes: 0 });
    expect(found.get(0)).toEqual({ start: 90, errorMinutes: 0 });
  });

  // The quantile of a triangle in closed form, and the large-sample error of a sample quantile, sqrt(p (1 - p) / n) over
  // the density there (both from memory of any handbook of statistics).
  it('is the deadline less the quantile of the length, give or take the error of a sample quantile', () => {
    const [low, likely, high] = [60, 90, 150];
    const network: RiskNetwork = {
      nodes: [{ id: 'CUT', duration: threePoint('triangular', { low, likely, high }), after: [] }],
    };
    const runs = 20_000;
    const chance = 0.9;
    const deadlineMinutes = 400;
    const beyond = Math.sqrt((1 - chance) * (high - low) * (high - likely));
    const density = (2 * beyond) / ((high - low) * (high - likely));
    const error = Math.sqrt((chance * (1 - chance)) / runs) / density;
    const sizes: number[] = [];
    for (let seed = 1; seed <= 20; seed += 1) {
      const { start, errorMinutes } = chanceLimits(
        network,
        { runs, seed, deadlineMinutes, chance, after: () => 0 },
        [[0]],
      ).get(0)!;
      expect(Math.abs(start - (deadlineMinutes - (high - beyond)))).toBeLessThan(5 * error);
      sizes.push(errorMinutes);
    }
    const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
    expect(mean / error).toBeGreaterThan(0.8);
    expect(mean / error).toBeLessThan(1.25);
  });
});
