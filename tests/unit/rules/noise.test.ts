import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curfewSchema } from '../../../src/model/index.js';
import {
  ambientVerdict,
  combinedDb,
  distanceDb,
  haulRoadDb,
  loudHours,
  noiseLimitsSchema,
  onTimeDb,
  predict,
  type NoiseSource,
} from '../../../src/rules/noise/index.js';

const source = (more: Partial<NoiseSource> = {}): NoiseSource => ({
  plant: 'Saw',
  levelDb: 80,
  metres: 10,
  ground: 'hard',
  screeningDb: 0,
  onTimePercent: 100,
  ...more,
});
const limits = noiseLimitsSchema.parse({
  schema: 1,
  name: 'test',
  facade: false,
  periods: [
    {
      period: 'Night',
      bands: [{ from: '23:00', to: '07:00', days: ['sat'] }],
      limitDb: 60,
      source: 'this test',
      sureness: 'our own',
    },
    {
      period: 'Day',
      bands: [
        { from: '07:00', to: '12:00' },
        { from: '13:00', to: '23:00' },
      ],
      limitDb: 80,
      source: 'this test',
      sureness: 'our own',
    },
  ],
});

describe('a prediction', () => {
  it('adds up from its parts', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 120, noNaN: true }),
        fc.double({ min: 25, max: 900, noNaN: true }),
        fc.constantFrom('hard' as const, 'soft' as const),
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 9 }),
        (levelDb, metres, ground, onTimePercent, count) => {
          const [one] = predict(
            [source({ levelDb, metres, ground, onTimePercent, count, screeningDb: 5 })],
            { facade: true },
          ).sources;
          const { at10mDb, countDb, distanceDb: far, screeningDb, onTimeDb: on, facadeDb } = one!;
          expect(one!.levelDb).toBeCloseTo(
            at10mDb + countDb + far + screeningDb + on + facadeDb,
            9,
          );
        },
      ),
    );
  });
  it('counts three machines as three sources', () => {
    const three = predict([source({ count: 3 })], { facade: false }).totalDb;
    expect(three).toBeCloseTo(
      predict([source(), source(), source()], { facade: false }).totalDb,
      9,
    );
  });
  it('uses the on-time of the period and leaves out a machine that stands still in it', () => {
    const saw = source({ onTimeByPeriod: { Night: 0, Day: 10 } });
    expect(predict([saw], { facade: false, period: 'Night' })).toMatchObject({
      totalDb: -Infinity,
      sources: [],
    });
    expect(predict([saw], { facade: false, period: 'Day' }).totalDb).toBeCloseTo(70, 9);
    expect(predict([saw], { facade: false, period: 'Evening' }).totalDb).toBeCloseTo(80, 9);
  });
  it('is never lower for one machine more', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 120, noNaN: true }), { minLength: 1 }),
        fc.double({ min: 0, max: 120, noNaN: true }),
        (levels, more) => {
          expect(combinedDb([...levels, more])).toBeGreaterThanOrEqual(combinedDb(levels) - 1e-9);
        },
      ),
    );
  });
  it.each([
    ['no distance', () => distanceDb(0, 'hard')],
    ['soft ground nearer than 25 m', () => distanceDb(24.9, 'soft')],
    ['no on-time', () => onTimeDb(0)],
    ['more than all the time', () => onTimeDb(101)],
    ['half a machine', () => predict([source({ count: 0.5 })], { facade: false })],
    ['screening that adds', () => predict([source({ screeningDb: -1 })], { facade: false })],
  ])('refuses %s', (_, call) => {
    expect(call).toThrow(RangeError);
  });
});

describe('loud hours', () => {
  it('are closed in the bands of a period whose limit is passed, and open on the limit', () => {
    const verdict = loudHours('Cut rail', [source()], limits);
    expect(verdict.periods.map((period) => period.overDb)).toEqual([20, 0]);
    expect(verdict.curfews.map(({ from, to, days, bars }) => ({ from, to, days, bars }))).toEqual([
      { from: '23:00', to: '07:00', days: ['sat'], bars: 'loud' },
    ]);
  });
  it('are closed in every band of a period, by a hair over', () => {
    const { curfews } = loudHours('Cut rail', [source({ levelDb: 80.001 })], limits);
    expect(curfews.map((curfew) => curfew.from)).toEqual(['23:00', '07:00', '13:00']);
  });
  it('are curfews as a rule set takes them, and say that this is screening only', () => {
    const { curfews, note } = loudHours('Cut rail', [source()], limits);
    for (const curfew of curfews) {
      expect(curfewSchema.parse(curfew)).toEqual(curfew);
      expect(curfew.source).toContain('Screening only');
    }
    expect(note).toContain('Screening only');
  });
});

describe('the level that is there already', () => {
  const thresholds = { A: 45, B: 50, C: 55 };
  it('sets the threshold, which a site on it does not pass', () => {
    expect(ambientVerdict(40, 45, thresholds)).toMatchObject({ effect: false, because: 'within' });
    expect(ambientVerdict(40, 45.1, thresholds)).toMatchObject({
      effect: true,
      because: 'above threshold',
    });
  });
  it('above every threshold asks for a rise of more than 3 dB', () => {
    expect(ambientVerdict(60, 59.9, thresholds).effect).toBe(false);
    const louder = ambientVerdict(60, 60, thresholds);
    expect(louder.riseDb).toBeCloseTo(3.0103, 4);
    expect(louder).toMatchObject({ effect: true, because: 'rise above 3 dB' });
  });
});

// BS 5228-1 F.2.5: from memory, fair; figure worked out: 109 - 33 + 10 - 10 - 10.
it('a haul road of ten vehicles an hour at 10 km/h is 66 dB at 10 m', () => {
  expect(
    haulRoadDb({ powerDb: 109, vehiclesPerHour: 10, kilometresPerHour: 10, metres: 10 }),
  ).toBeCloseTo(66, 9);
});
