import { describe, expect, it } from 'vitest';
import { bestStop, compareOptions, costCurve } from '../../../src/price/index.js';
import { aBook, aWindow, at } from './builders.js';

const curve = costCurve(
  {
    window: aWindow(),
    prices: aBook({ delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: '10' }] } }),
    trains: [],
    resources: [],
  },
  200,
);
const option = (name: string, overrunByRun: readonly number[], amount = '0') => ({
  name,
  overrunByRun,
  curve,
  fixed: [{ what: 'booking', amount, source: 'made for the test' }],
});

describe('options side by side', () => {
  it('holds run against run, so that luck which strikes both cancels', () => {
    // Each run of the longer window is 10 min better; the runs themselves differ widely.
    const { options } = compareOptions([
      option('as booked', [10, 60, 30, 120]),
      option('10 min longer', [0, 50, 20, 110], '40'),
    ]);
    expect(options[0]).toMatchObject({
      verdict: 'the reference',
      expectedTotal: '550.00',
      worthUpTo: null,
    });
    expect(options[1]).toMatchObject({
      expectedOverrunCost: '450.00',
      expectedTotal: '490.00',
      difference: '-60.00',
      differenceError: '0.00',
      verdict: 'cheaper',
      cheaperInShare: 1,
      worthUpTo: '100.00',
      breakEvenOverrunMinutes: 4,
    });
    expect(Number(options[1]!.standardError)).toBeGreaterThan(200);
  });

  it('breaks even at the fixed cost it names', () => {
    const a = option('a', [10, 60, 32]);
    const { worthUpTo } = compareOptions([a, option('b', [0, 30, 3])]).options[1]!;
    expect(worthUpTo).toBe('230.00');
    const { options } = compareOptions([a, option('b', [0, 30, 3], worthUpTo!)]);
    expect(options[1]!.difference).toBe('0.00');
  });

  it('gives the standard error of the paired difference', () => {
    const { options } = compareOptions([
      option('a', [10, 20, 30, 40]),
      option('b', [5, 25, 20, 30]),
    ]);
    // Differences -50, 50, -100, -100: mean -50, sample variance 15000 / 3.
    expect(options[1]).toMatchObject({
      difference: '-50.00',
      differenceError: Math.sqrt(5000 / 4).toFixed(2),
      verdict: 'too close to call',
      cheaperInShare: 0.75,
    });
  });

  it('names the cheapest and those that cannot be told from it', () => {
    const c = compareOptions([
      option('a', [10, 20, 30, 40]),
      option('b', [5, 25, 20, 30]),
      option('c', [100, 120, 130, 140]),
    ]);
    expect([c.cheapest, c.tied]).toEqual(['b', ['a']]);
    expect(c.options[2]!.verdict).toBe('dearer');
  });

  it('calls nothing on a single run', () => {
    expect(compareOptions([option('a', [10]), option('b', [5])]).options[1]!.verdict).toBe(
      'too close to call',
    );
  });

  it('refuses runs that cannot be paired, and two currencies', () => {
    expect(() => compareOptions([])).toThrow(RangeError);
    expect(() => compareOptions([option('a', [])])).toThrow(/no run/);
    expect(() => compareOptions([option('a', [1]), option('b', [1, 2])])).toThrow(/in pairs/);
    const euro = { ...option('b', [1]), curve: { ...curve, currency: 'EUR' } };
    expect(() => compareOptions([option('a', [1]), euro])).toThrow(/not in GBP/);
  });
});

describe('one more unit, or stop', () => {
  const inputs = {
    candidates: [
      { units: 6, stopAt: at('2027-05-13 03:00'), overrunByRun: [0, 10, 0, 0] },
      { units: 8, stopAt: at('2027-05-13 04:00'), overrunByRun: [60, 90, 20, 70] },
      { units: 7, stopAt: at('2027-05-13 03:30'), overrunByRun: [0, 30, 0, 10] },
    ],
    unitsWanted: 8,
    pricePerLostUnit: '150',
    pricePerReturn: '40',
    curve,
  };

  it('prices every stop and names the cheapest', () => {
    const best = bestStop(inputs);
    expect(
      best.choices.map((c) => [c.units, c.reBooking, c.expectedOverrunCost, c.expectedTotal]),
    ).toEqual([
      [6, '340.00', '25.00', '365.00'],
      [7, '190.00', '100.00', '290.00'],
      [8, '0.00', '600.00', '600.00'],
    ]);
    expect(best.choices.map((c) => c.oneMore)).toEqual([null, '-75.00', '310.00']);
    expect([best.bestUnits, best.bestStopAt]).toEqual([7, at('2027-05-13 03:30')]);
  });

  it('agrees with adding up each run by hand', () => {
    const best = bestStop(inputs);
    for (const choice of best.choices) {
      const { overrunByRun } = inputs.candidates.find((c) => c.units === choice.units)!;
      const left = 8 - choice.units;
      const total =
        overrunByRun.reduce((sum, m) => sum + 10 * m, 0) / 4 + 150 * left + (left > 0 ? 40 : 0);
      expect(choice.expectedTotal).toBe(total.toFixed(2));
    }
  });

  it('stops earlier where two stops cost the same', () => {
    const same = bestStop({
      ...inputs,
      candidates: [
        { units: 8, stopAt: 2, overrunByRun: [15] },
        { units: 7, stopAt: 1, overrunByRun: [0] },
      ],
      pricePerReturn: '0',
    });
    expect(same.bestUnits).toBe(7);
  });

  it('refuses more units than are wanted, and one count twice', () => {
    const one = { units: 9, stopAt: 0, overrunByRun: [0] };
    expect(() => bestStop({ ...inputs, candidates: [one] })).toThrow(/not among 0 to 8/);
    const two = { ...one, units: 3 };
    expect(() => bestStop({ ...inputs, candidates: [two, two] })).toThrow(/twice/);
  });
});
