import { describe, expect, it } from 'vitest';
import {
  classicVariance,
  forwardPass,
  meanOf,
  simulate,
  threePoint,
  type RiskNetwork,
} from '../../src/risk/index.js';

// Reference notes, values 7.9, classic PERT: te = (a + 4m + b) / 6, var = ((b - a) / 6)^2 (V: several pages read).
// Printed normal tables round z to two places, hence +/- 0.002 on published probabilities.
const TABLE_TOLERANCE = 0.002;

type Row = readonly [id: string, low: number, likely: number, high: number, after: string];

function networkOf(rows: readonly Row[]): RiskNetwork {
  const ids = rows.map(([id]) => id);
  return {
    nodes: rows.map(([id, low, likely, high, after]) => ({
      id,
      duration: threePoint('beta-pert', { low, likely, high }),
      after: [...after].map((text) => ({
        node: ids.indexOf(text),
        from: 'finish' as const,
        lagMinutes: 0,
      })),
    })),
  };
}

const teOf = ([, low, likely, high]: Row): number =>
  meanOf(threePoint('beta-pert', { low, likely, high }));

/** The classic sum: variance along the path of the means. */
function classic(rows: readonly Row[], path: string) {
  const own = rows.filter(([id]) => path.includes(id));
  const mean = own.reduce((sum, row) => sum + teOf(row), 0);
  const variance = own.reduce((sum, [, low, , high]) => sum + classicVariance({ low, high }), 0);
  return { mean, variance, deviation: Math.sqrt(variance) };
}

/** Standard normal cumulative, Abramowitz and Stegun 7.1.26 (from memory; good to 1.5e-7). */
function normal(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - poly * Math.exp(-x * x);
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2;
}

describe('single three-point estimates', () => {
  it.each([
    [3, 5, 7, 5, 0.667],
    [2, 6, 7, 5.5, 0.833],
  ])('(%d, %d, %d) has te %d', (low, likely, high, te, sd) => {
    expect(meanOf(threePoint('beta-pert', { low, likely, high }))).toBeCloseTo(te, 10);
    expect(Math.sqrt(classicVariance({ low, high }))).toBeCloseTo(sd, 3);
  });
});

describe('the stadium case (Heizer and Render; V, D)', () => {
  const rows: readonly Row[] = [
    ['A', 20, 30, 40, ''],
    ['C', 50, 60, 100, 'A'],
    ['D', 30, 50, 100, 'C'],
    ['G', 25, 30, 35, 'D'],
    ['H', 10, 20, 30, 'G'],
    ['I', 20, 25, 60, 'H'],
    ['L', 20, 25, 60, 'I'],
  ];
  it('sums to 260 with variance 319.44, and the published chance of 270', () => {
    const sum = classic(rows, 'ACDGHIL');
    expect(sum.mean).toBeCloseTo(260, 8);
    expect(sum.variance).toBeCloseTo(319.44, 2);
    expect(sum.deviation).toBeCloseTo(17.87, 2);
    const chance = normal((270 - sum.mean) / sum.deviation);
    expect(chance).toBeCloseTo(0.7121, 4);
    expect(Math.abs(chance - 0.71226)).toBeLessThan(TABLE_TOLERANCE);
  });

  it('is, on its single path, what the simulation says within 0.02: nothing merges, only the shape differs', () => {
    const result = simulate(networkOf(rows), { runs: 40_000, seed: 1, deadlineMinutes: 270 });
    expect(result.meanMinutes).toBeCloseTo(260, 0);
    expect(Math.abs(result.deadline!.onTime.probability - 0.7121)).toBeLessThan(0.02);
  });
});

const published = [
  {
    name: 'a set of fourteen activities (means V; path, variance and chance D)',
    rows: [
      ['A', 5, 5, 7, ''],
      ['B', 1, 2, 5, ''],
      ['C', 5, 5, 5, 'A'],
      ['D', 4, 8, 13, 'A'],
      ['E', 1, 10, 17, 'BC'],
      ['F', 1, 5, 7, 'D'],
      ['G', 2, 6, 9, 'D'],
      ['H', 4, 4, 6, 'EF'],
      ['I', 2, 7, 10, 'GH'],
      ['J', 2, 4, 7, 'I'],
      ['K', 6, 10, 13, 'I'],
      ['L', 2, 6, 6, 'J'],
      ['M', 2, 2, 3, 'K'],
      ['N', 7, 7, 12, 'LM'],
    ],
    means: [5.33, 2.33, 5, 8.17, 9.67, 4.67, 5.83, 4.33, 6.67, 4.17, 9.83, 5.33, 2.17, 7.83],
    path: 'ACEHIKMN',
    finish: 50.83,
    variance: 11.194,
    chances: [[55, 0.8935]],
  },
  {
    name: 'six activities of a knowledge centre (inputs V, results D)',
    rows: [
      ['A', 2, 5, 8, ''],
      ['B', 1, 2, 9, 'A'],
      ['C', 0.25, 0.5, 3.75, 'A'],
      ['D', 1, 1, 7, 'B'],
      ['E', 1, 2, 9, 'BC'],
      ['F', 1, 3, 11, 'DE'],
    ],
    means: [5, 3, 1, 2, 3, 4],
    path: 'ABEF',
    finish: 15,
    variance: 7.333,
    chances: [
      [17, 0.7699],
      [18, 0.866],
      [20, 0.9676],
    ],
  },
  {
    name: 'the foundry case (Heizer and Render, M+, D)',
    rows: [
      ['A', 1, 2, 3, ''],
      ['B', 2, 3, 4, ''],
      ['C', 1, 2, 3, 'A'],
      ['D', 2, 4, 6, 'B'],
      ['E', 1, 4, 7, 'C'],
      ['F', 1, 2, 9, 'C'],
      ['G', 3, 4, 11, 'DE'],
      ['H', 1, 2, 3, 'FG'],
    ],
    means: [2, 3, 2, 4, 4, 3, 5, 2],
    path: 'ACEGH',
    finish: 15,
    variance: 3.111,
    chances: [[16, 0.7146]],
  },
] as const;

describe.each(published)('$name', ({ rows, means, path, finish, variance, chances }) => {
  const network = networkOf(rows);

  it('has the published means, length and variance of its path', () => {
    rows.forEach((row, k) => expect(teOf(row)).toBeCloseTo(means[k]!, 2));
    const times = forwardPass(network.nodes, (index) => teOf(rows[index]!));
    expect(Math.max(...times.map((time) => time.finish))).toBeCloseTo(finish, 2);
    expect(classic(rows, path).variance).toBeCloseTo(variance, 3);
  });

  it.each<readonly [number, number]>([...chances])(
    'has the published normal chance of %d: %d',
    (by, chance) => {
      const sum = classic(rows, path);
      const found = normal((by - sum.mean) / sum.deviation);
      expect(Math.abs(found - chance)).toBeLessThan(TABLE_TOLERANCE);
    },
  );
});

it('has the published figures for mean 21 and variance 4 (inputs V, D)', () => {
  expect(normal(-0.5)).toBeCloseTo(0.3085, 4);
  expect(normal(1)).toBeCloseTo(0.8413, 4);
  expect(21 + 1.6449 * 2).toBeCloseTo(24.29, 2);
});

describe('where near-critical paths merge', () => {
  it('the classic sum understates the length and overstates the chance, by more than three standard errors', () => {
    // Four equal paths side by side: values 7.10 says in words what this shows in numbers.
    const rows: readonly Row[] = ['A', 'B', 'C', 'D'].map((id) => [id, 20, 25, 60, ''] as const);
    const one = classic(rows, 'A');
    const by = one.mean + one.deviation;
    const result = simulate(networkOf(rows), { runs: 40_000, seed: 3, deadlineMinutes: by });
    expect(result.meanMinutes - one.mean).toBeGreaterThan(3 * result.meanStandardError);
    const { probability, standardError } = result.deadline!.onTime;
    expect(normal(1) - probability).toBeGreaterThan(3 * standardError);
    expect(normal(1) - probability).toBeGreaterThan(0.25);
  });
});
