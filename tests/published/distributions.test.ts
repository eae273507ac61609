import { describe, expect, it } from 'vitest';
import {
  classicVariance,
  cumulativeOf,
  inverseTable,
  meanOf,
  nextWord,
  quantileOf,
  TABLE_CELLS,
  threePoint,
  varianceOf,
} from '../../src/risk/index.js';

// Reference notes, values 7.10: three cases worked for both distributions. Formulas marked M+ there (from memory,
// recomputed); alpha and beta of the beta-PERT marked V (a stored "PERT distribution" page was read).
const cases = [
  {
    points: { low: 2, likely: 3, high: 6 },
    triangular: { mean: 3.6667, sd: 0.8498, quantiles: [3.5505, 4.4508, 4.9046, 5.2254] },
    beta: { mean: 3.3333, variance: 0.5079, quantiles: [3.2552, 3.9608, 4.3356, 4.6296] },
    classic: 0.4444,
  },
  {
    points: { low: 4, likely: 5, high: 9 },
    triangular: { mean: 6, sd: 1.0801, quantiles: [5.8377, 7.0, 7.5858, 8.0] },
    beta: { mean: 5.5, variance: 0.75, quantiles: [5.3834, 6.2513, 6.7267, 7.1064] },
    classic: 0.6944,
  },
  {
    points: { low: 20, likely: 25, high: 60 },
    triangular: { mean: 35, sd: 8.8976, quantiles: [33.5425, 43.2668, 48.1678, 51.6334] },
    beta: { mean: 30, variance: 42.857, quantiles: [28.8448, 35.5138, 39.3561, 42.5138] },
    classic: 44.444,
  },
];
const shares = [0.5, 0.8, 0.9, 0.95];

describe.each(cases)('$points', ({ points, triangular, beta, classic }) => {
  it('has the published triangular mean, deviation and quantiles', () => {
    const distribution = threePoint('triangular', points);
    expect(meanOf(distribution)).toBeCloseTo(triangular.mean, 4);
    expect(Math.sqrt(varianceOf(distribution))).toBeCloseTo(triangular.sd, 4);
    shares.forEach((p, k) =>
      expect(quantileOf(distribution, p)).toBeCloseTo(triangular.quantiles[k]!, 4),
    );
  });

  it('has the published beta-PERT mean, exact variance and quantiles', () => {
    const distribution = threePoint('beta-pert', points);
    expect(meanOf(distribution)).toBeCloseTo(beta.mean, 4);
    expect(varianceOf(distribution)).toBeCloseTo(beta.variance, 3);
    shares.forEach((p, k) =>
      expect(quantileOf(distribution, p)).toBeCloseTo(beta.quantiles[k]!, 4),
    );
    expect(classicVariance(points)).toBeCloseTo(classic, 3);
  });

  it.each(['triangular', 'beta-pert'] as const)('inverts its own %s cumulative', (kind) => {
    const distribution = threePoint(kind, points);
    for (let k = 1; k < 100; k += 1)
      expect(cumulativeOf(distribution, quantileOf(distribution, k / 100))).toBeCloseTo(k / 100, 7);
  });

  it.each(['triangular', 'beta-pert'] as const)(
    'has a %s sampling table that keeps the mean within 2e-5 of the width and the variance within 1e-3',
    (kind) => {
      const distribution = threePoint(kind, points);
      const table = inverseTable(distribution);
      let mean = 0;
      let square = 0;
      for (let k = 0; k < TABLE_CELLS; k += 1) {
        const [a, b] = [table[k]!, table[k + 1]!];
        expect(b).toBeGreaterThanOrEqual(a);
        mean += (a + b) / 2 / TABLE_CELLS;
        square += (a * a + a * b + b * b) / 3 / TABLE_CELLS;
      }
      expect(Math.abs(mean - meanOf(distribution))).toBeLessThan(2e-5 * (points.high - points.low));
      expect((square - mean * mean) / varianceOf(distribution)).toBeCloseTo(1, 3);
    },
  );
});

describe('a single triangular P-value against its own formula', () => {
  it('is a + sqrt(p (b-a) (m-a)) below the mode', () => {
    const distribution = threePoint('triangular', { low: 2, likely: 5, high: 6 });
    expect(quantileOf(distribution, 0.5)).toBeCloseTo(2 + Math.sqrt(0.5 * 4 * 3), 12);
  });
});

describe('the random words', () => {
  it('are those of the reference xoshiro128** 1.1 from state 1, 2, 3, 4', () => {
    // Source: the rand_xoshiro crate's `reference` test, whose values were made with the authors' C program
    // xoshiro128starstar.c v1.1 (read in its public repository).
    const state = Int32Array.of(1, 2, 3, 4);
    expect(Array.from({ length: 10 }, () => nextWord(state))).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]);
  });
});
