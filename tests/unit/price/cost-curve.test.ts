import { english } from '../../../src/engine/english/say.js';
import { describe, expect, it } from 'vitest';
import { costCurve, countOverruns, expectedCost } from '../../../src/price/index.js';
import { aBook, aResource, aWindow, trainsDue } from './builders.js';

const curveOf = (book: Record<string, unknown>, max: number, more = {}) =>
  costCurve({ window: aWindow(), prices: aBook(book), trains: [], resources: [], ...more }, max);
const steps = (curve: ReturnType<typeof curveOf>) =>
  curve.steps.map((s) => [s.atMinute, s.kind, s.rise]);

describe('the cost of every minute', () => {
  it('names each train that is held or cancelled, each charge, and what the total gains there', () => {
    const curve = curveOf(
      {
        delay: { by: 'train', rate: '10', cancelAfterMinutes: 4, deemedMinutes: 10 },
        fixed: [{ code: 'bus', name: 'Buses called', afterMinutes: 2, amount: '100' }],
      },
      5,
      { trains: trainsDue([0, 3]) },
    );
    expect(curve.amounts).toEqual(['0.00', '10.00', '20.00', '130.00', '150.00', '220.00']);
    expect(steps(curve)).toEqual([
      [1, 'train-held', '10.00'],
      [3, 'threshold', '110.00'],
      [4, 'train-held', '20.00'],
      [5, 'train-cancelled', '70.00'],
    ]);
    expect(curve.steps[1]!.name).toBe('Buses called');
  });

  it('names least hours, the end of a night rate, and the cap on damages', () => {
    const curve = curveOf(
      {
        basis: 'damages',
        standing: {
          labour: ['gang'],
          leastHours: 'overrun',
          factors: [{ name: 'night', factor: '2', from: '22:00', to: '06:00' }],
        },
        damages: { rate: '1', afterMinutes: 5, cap: '10', replaces: [] },
      },
      90,
      { resources: [aResource('gang', 60, { leastHours: 0.5 })] },
    );
    expect(curve.steps.map((s) => [s.atMinute, s.kind, english(s.name)])).toEqual([
      [1, 'least-hours', 'least 0.5 h of gang'],
      [6, 'threshold', 'delay damages begin'],
      [15, 'cap', 'delay damages reach their cap'],
      [61, 'rate-change', 'gang at factor 1'],
    ]);
    expect(curve.amounts[90]).toBe('160.00');
  });

  it('lists what comes at its last minute, and nothing that comes after it', () => {
    const book = {
      basis: 'damages',
      damages: { rate: '1', afterMinutes: 5, cap: '10', replaces: [] },
      delay: { by: 'bands', bands: [0, 15].map((from) => ({ afterMinutes: from, rate: '1' })) },
    };
    expect(curveOf(book, 15).steps.map(({ atMinute, kind }) => [atMinute, kind])).toEqual([
      [1, 'rate-change'],
      [6, 'threshold'],
      [15, 'cap'],
    ]);
    expect(curveOf(book, 14).steps.map(({ atMinute }) => atMinute)).toEqual([1, 6]);
    expect(curveOf(book, 16).steps.map(({ atMinute }) => atMinute)).toEqual([1, 6, 15, 16]);
  });

  it('lists each minute at which cancelled trains that free their path make the cost fall', () => {
    const rule = { by: 'train', rate: '10', headwayMinutes: 10, cancelAfterMinutes: 5 };
    const trains = trainsDue([0, 10, 20, 30]);
    const curve = curveOf({ delay: { ...rule, cancelledTrains: 'free-path' } }, 8, { trains });
    // At 5 min the lateness is handed down the queue: 4 x 5. At 6 the first is cancelled at 5 and frees the rest.
    expect(curve.amounts[5]).toBe('200.00');
    expect(curve.amounts[6]).toBe('50.00');
    expect(curve.falls).toEqual([{ atMinute: 6, by: '150.00' }]);
    expect(curveOf({ delay: rule }, 8, { trains }).falls).toEqual([]);
  });

  it('shows heads that are not counted beside the total', () => {
    const curve = curveOf(
      { damages: { rate: '7' }, fixed: [{ code: 'f', name: 'F', afterMinutes: 0, amount: '5' }] },
      2,
    );
    expect(curve.minor).toEqual([0, 500, 500]);
    expect(curve.heads.map((h) => [h.code, h.counted, h.minor])).toEqual([
      ['f', true, [0, 500, 500]],
      ['damages', false, [0, 700, 1400]],
    ]);
  });
});

describe('expected cost over simulated overruns', () => {
  // 0, 1.00, 2.00 … a minute; and 50.00 more past 30.
  const curve = curveOf(
    {
      delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: '1' }] },
      fixed: [{ code: 'bus', name: 'Buses', afterMinutes: 30, amount: '50' }],
    },
    60,
  );

  it('is the mean over the runs, with its standard error', () => {
    const e = expectedCost(curve, [
      { minutes: -20, count: 5 },
      { minutes: 0, count: 1 },
      { minutes: 10, count: 2 },
      { minutes: 40, count: 2 },
    ]);
    // Costs 0 x 6, 10 x 2, 90 x 2: mean 20, sample variance (2 x 100 + 2 x 8100 - 10 x 400) / 9.
    expect(e.runs).toBe(10);
    expect(e.expected).toBe('20.00');
    expect(e.standardError).toBe(Math.sqrt((200 + 16200 - 4000) / 9 / 10).toFixed(2));
    expect([e.p80, e.p95]).toEqual(['10.00', '90.00']);
    expect(e.exceedance).toEqual([
      { cost: '0.00', chanceOfMore: 0.4 },
      { cost: '10.00', chanceOfMore: 0.2 },
      { cost: '90.00', chanceOfMore: 0 },
    ]);
  });

  it('gives the chance of each step with its standard error', () => {
    const e = expectedCost(curve, [
      { minutes: 30, count: 75 },
      { minutes: 31, count: 25 },
    ]);
    expect(e.steps.map((s) => [s.code, s.chance])).toEqual([
      ['operator-delay', 1],
      ['bus', 0.25],
    ]);
    expect(e.steps[1]!.standardError).toBeCloseTo(Math.sqrt((0.25 * 0.75) / 100), 12);
  });

  // Nearest rank, by its definition: of 20 runs the 10th, the 16th and the 19th.
  it('gives percentiles by nearest rank, over runs counted one by one', () => {
    const minutes = Array.from({ length: 20 }, (_, i) => 20 - i);
    expect(countOverruns([3, 0, 3])).toEqual([
      { minutes: 3, count: 2 },
      { minutes: 0, count: 1 },
    ]);
    const e = expectedCost(curve, countOverruns(minutes));
    expect([e.runs, e.p50, e.p80, e.p95]).toEqual([20, '10.00', '16.00', '19.00']);
  });

  it('rounds the mean once', () => {
    expect(
      expectedCost(curve, [
        { minutes: 1, count: 1 },
        { minutes: 0, count: 2 },
      ]).expected,
    ).toBe('0.33');
  });

  it('refuses no runs, part runs, and overruns beyond the curve', () => {
    expect(() => expectedCost(curve, [])).toThrow(/at least one run/);
    expect(() => expectedCost(curve, [{ minutes: 1, count: 0.5 }])).toThrow(RangeError);
    expect(() => expectedCost(curve, [{ minutes: 61, count: 1 }])).toThrow(/not on the cost curve/);
    expect(() => expectedCost(curve, [{ minutes: 1.5, count: 1 }])).toThrow(RangeError);
  });
});
