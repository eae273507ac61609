import { describe, expect, it } from 'vitest';
import type { Activity } from '../../src/model/index.js';
import { handbackOf } from '../../src/engine/handback/handback.js';
import type { HandbackResult } from '../../src/risk/index.js';
import { anActivity, aPlan, at, aWindow, placed, rulesWith } from '../helpers/handback-plan.js';

// Checks against outside values through what `handback` answers, and not through the functions inside it.

const bare = (shape: 'triangular' | 'beta-pert') =>
  rulesWith({ leadIn: [], leadOut: [], margin: { minutes: 0 }, risk: { shape } });
const RUNS = 100_000;
const link = (activity: string) => ({ activity, from: 'finish' as const, gapMinutes: 0 });

function answered(
  activities: readonly Activity[],
  shape: 'triangular' | 'beta-pert',
  end: number,
  resources: Parameters<typeof aPlan>[1] = {},
): HandbackResult {
  let clock = 0;
  const visits = activities.map((activity) => {
    const minutes = activity.work.kind === 'whole' ? activity.work.minutes : 0;
    const visit = placed(activity.id, clock, clock + minutes);
    clock += minutes;
    return visit;
  });
  const window = aWindow({ end: at(end) });
  const plan = aPlan(activities, { rules: bare(shape), windows: [window], ...resources });
  return handbackOf(plan, { placements: visits, seed: 3, runs: RUNS })[0]!;
}

/** Share of the answer's runs that hand back within so many minutes. */
const within = ({ simulation }: HandbackResult, minutes: number): number =>
  simulation.handbackMinutes.filter((value) => value <= minutes).length / RUNS;

const threeErrors = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / RUNS);

// Quantiles at 0.5, 0.8, 0.9 and 0.95 of published three-point values (project reference values, derived there and
// checked by a general-purpose statistics library), ten times as long so that they are minutes of work.
describe('published quantiles, as a handback of one piece of work', () => {
  it.each([
    ['triangular', 20, 25, 60, [33.5425, 43.2668, 48.1678, 51.6334]],
    ['beta-pert', 20, 25, 60, [28.8448, 35.5138, 39.3561, 42.5138]],
    ['triangular', 2, 5, 6, undefined],
  ] as const)('%s %d, %d, %d', (shape, low, likely, high, quantiles) => {
    const work = {
      kind: 'whole' as const,
      minutes: likely * 10,
      spread: { low: low * 10, high: high * 10 },
    };
    const found = answered([anActivity('A', work)], shape, 1000);
    // The third by the textbook inverse of the triangle, here.
    const inverse = (p: number): number => {
      const turn = (likely - low) / (high - low);
      return p < turn
        ? low + Math.sqrt(p * (high - low) * (likely - low))
        : high - Math.sqrt((1 - p) * (high - low) * (high - likely));
    };
    [0.5, 0.8, 0.9, 0.95].forEach((p, k) => {
      const quantile = 10 * (quantiles?.[k] ?? inverse(p));
      expect(Math.abs(within(found, quantile) - p)).toBeLessThanOrEqual(threeErrors(p) + 1e-3);
    });
  });
});

/** Chance of each tenth of a minute, from the triangle's own density. */
function massOf(low: number, likely: number, high: number): Float64Array {
  const mass = new Float64Array(Math.ceil(high * 10) + 2);
  const parts = 20_000;
  let total = 0;
  for (let k = 0; k < parts; k += 1) {
    const x = low + ((k + 0.5) / parts) * (high - low);
    const p = x < likely ? (x - low) / (likely - low) : (high - x) / (high - likely);
    mass[Math.round(x * 10)]! += p;
    total += p;
  }
  return mass.map((value) => value / total);
}

const convolved = (a: Float64Array, b: Float64Array): Float64Array => {
  const sum = new Float64Array(a.length + b.length - 1);
  a.forEach((p, i) => {
    if (p > 0) b.forEach((q, j) => (sum[i + j]! += p * q));
  });
  return sum;
};
const upTo = (mass: Float64Array, minutes: number): number =>
  mass.slice(0, Math.floor(minutes * 10) + 1).reduce((sum, value) => sum + value, 0);

const piece = (id: string, after: readonly string[], over: Partial<Activity> = {}): Activity =>
  anActivity(
    id,
    { kind: 'whole', minutes: 40, spread: { low: 30, high: 70 } },
    { after: after.map(link), ...over },
  );

describe('exact convolution, as a handback of several pieces', () => {
  const one = massOf(30, 40, 70);
  const two = convolved(one, one);
  const three = convolved(two, one);

  it('of three in a row', () => {
    const found = answered(
      [piece('A', []), piece('B', ['A']), piece('C', ['B'])],
      'triangular',
      150,
    );
    const exact = upTo(three, 150);
    const { probability } = found.simulation.outlook.onTime;
    expect(Math.abs(probability - exact)).toBeLessThanOrEqual(threeErrors(exact) + 2e-3);
  });

  it('of two side by side and one after both: the chances of the two are multiplied', () => {
    const found = answered(
      [piece('A', []), piece('B', []), piece('C', ['A', 'B'])],
      'triangular',
      105,
    );
    let before = 0;
    const latest = one.map((_, k) => {
      const both = upTo(one, k / 10 + 1e-9) ** 2;
      const own = both - before;
      before = both;
      return own;
    });
    const exact = upTo(convolved(latest, one), 105);
    const { probability } = found.simulation.outlook.onTime;
    expect(Math.abs(probability - exact)).toBeLessThanOrEqual(threeErrors(exact) + 2e-3);
  });

  it('of three that queue for one machine, though none waits for another: the same as in a row', () => {
    const crane = { resources: [{ resource: 'crane', amount: 1 }] };
    const found = answered(
      [piece('A', [], crane), piece('B', [], crane), piece('C', [], crane)],
      'triangular',
      150,
      { resources: [{ id: 'crane', availability: [{ capacity: 1 }] }] },
    );
    const exact = upTo(three, 150);
    const { probability } = found.simulation.outlook.onTime;
    expect(Math.abs(probability - exact)).toBeLessThanOrEqual(threeErrors(exact) + 2e-3);
  });
});
