import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE, totalMinutes } from '../../../src/calendar/index.js';
import {
  constantEnergy,
  curingMinutes,
  earliestReady,
  energyByTemperature,
  evenRows,
  gustAtHeight,
  gustOf,
  liftingHours,
  maturityBetween,
  maturityRate,
  reducedLimit,
  squareLaw,
  weatherOf,
  type MaturityModel,
} from '../../../src/rules/conditions/index.js';

const start = Date.UTC(2027, 5, 26, 22);
const hours = (n: number) => start + n * HOUR;
const winds = (...values: number[]) =>
  weatherOf(
    evenRows(
      start,
      60,
      values.map((windMps) => ({ windMps })),
    ),
    hours(values.length),
  ).weather;
const window = { start, end: hours(4) };
// 10 m/s at the tip of a boom at 10 m is a mean wind of 7.142857 m/s.
const lift = { chartLimitMps: 14, heightMetres: 10 };

describe('weather', () => {
  it('holds from row to row and the last to the end', () => {
    const { weather } = weatherOf(
      [
        { at: start, windMps: 1 },
        { at: hours(3), windMps: 2 },
      ],
      hours(4),
    );
    expect(weather.map((item) => [item.start, item.end])).toEqual([
      [start, hours(3)],
      [hours(3), hours(4)],
    ]);
  });
  it('is cut at the end asked for', () => {
    const { weather } = weatherOf(evenRows(start, 60, [{}, {}, {}]), hours(1.5));
    expect(weather.map((item) => item.end)).toEqual([hours(1), hours(1.5)]);
  });
  it.each([
    ['time-out-of-order', { at: start }],
    ['bad-time', { at: NaN }],
    ['bad-wind', { at: hours(1), windMps: -1 }],
    ['bad-wind', { at: hours(1), gustMps: 999 }],
    ['bad-temperature', { at: hours(1), temperatureC: NaN }],
  ])('reports %s and lets the row before hold on', (code, row) => {
    const { weather, faults } = weatherOf([{ at: start, windMps: 3 }, row], hours(2));
    expect(faults.map((fault) => [fault.code, fault.row])).toEqual([[code, 1]]);
    expect(weather).toEqual([{ start, end: hours(2), row: { at: start, windMps: 3 } }]);
  });
});

describe('lifting', () => {
  it('goes on at the limit and stops above it', () => {
    const found = liftingHours(winds(5, 10, 10.01, 5), lift, window);
    expect(found.closed).toEqual([{ start: hours(2), end: hours(3) }]);
    expect(found).toMatchObject({ limitMps: 14, lostMinutes: 60, openMinutes: 180, unknown: [] });
    expect(found.highestGustMps).toBeCloseTo(14.014, 9);
  });
  it('waits for the wind to settle', () => {
    const found = liftingHours(winds(12, 5, 5, 5), { ...lift, settleMinutes: 20 }, window);
    expect(found.closed).toEqual([{ start, end: hours(1) + 20 * MINUTE }]);
  });
  it('takes what the forecast does not say as unknown, neither open nor closed', () => {
    const found = liftingHours(winds(5, 12), lift, window);
    expect(found.unknown).toEqual([{ start: hours(2), end: hours(4) }]);
    expect(found).toMatchObject({ lostMinutes: 60, openMinutes: 60 });
  });
  it('loses only what lies in the window', () => {
    const found = liftingHours(winds(12, 12, 12, 12), lift, { start: hours(1.5), end: hours(2) });
    expect(found.closed).toEqual([{ start: hours(1.5), end: hours(2) }]);
  });
  it('stops earlier for a big load', () => {
    const load = { tonnes: 20, areaM2: 30, drag: 1.4 };
    const found = liftingHours(winds(8, 8, 8, 8), { ...lift, load }, window);
    expect(found.limitMps).toBe(reducedLimit(14, load));
    expect(found.lostMinutes).toBe(240);
    expect(liftingHours(winds(8, 8, 8, 8), lift, window).lostMinutes).toBe(0);
  });
  it('stops in the cold where the manual gives a temperature', () => {
    const { weather } = weatherOf(
      evenRows(start, 60, [
        { windMps: 1, temperatureC: -20 },
        { windMps: 1, temperatureC: -20.1 },
      ]),
      hours(2),
    );
    expect(liftingHours(weather, { ...lift, coldestC: -20 }, window).closed).toEqual([
      { start: hours(1), end: hours(2) },
    ]);
  });
  it('takes the worse of mean and gust', () => {
    expect(gustOf({ at: 0, windMps: 10 }, 30)).toBe(gustAtHeight(10, 30));
    expect(gustOf({ at: 0, windMps: 10, gustMps: 12 }, 30)).toBe(gustAtHeight(10, 30));
    expect(gustOf({ at: 0, windMps: 10, gustMps: 21 }, 10)).toBeCloseTo(21, 9);
    expect(gustOf({ at: 0 }, 10)).toBeUndefined();
  });
  it('open, lost and unknown minutes always make the window', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 25 }), { maxLength: 8 }),
        fc.integer({ min: 0, max: 90 }),
        (values, settleMinutes) => {
          const found = liftingHours(winds(...values), { ...lift, settleMinutes }, window);
          expect(found.openMinutes).toBeGreaterThanOrEqual(0);
          expect(found.openMinutes + found.lostMinutes + totalMinutes(found.unknown)).toBe(240);
        },
      ),
    );
  });
  it('is never longer higher up', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 1, max: 99 }),
        (values, metres) => {
          const at = (heightMetres: number) =>
            liftingHours(winds(...values), { ...lift, heightMetres }, window).openMinutes;
          expect(at(metres + 1)).toBeLessThanOrEqual(at(metres));
        },
      ),
    );
  });
});

const factor: MaturityModel = { model: 'temperature-time', datumC: 0 };
const temperatures = (...values: number[]) =>
  weatherOf(
    evenRows(
      start,
      60,
      values.map((temperatureC) => ({ temperatureC })),
    ),
    hours(values.length),
  ).weather;

describe('concrete', () => {
  it('is ready at the first whole minute that has the maturity', () => {
    // 7 °C hours an hour: 10 of them take 85.7 minutes.
    const found = earliestReady(temperatures(7, 7, 7), start, factor, 10);
    expect(found.readyAt).toBe(start + 86 * MINUTE);
    expect(found.reached).toBeCloseTo((7 * 86) / 60, 9);
    expect(curingMinutes(found, start)).toBe(86);
  });
  it('says how much is missing when the temperatures end too soon', () => {
    const found = earliestReady(temperatures(7, 7), start, factor, 20);
    expect(found).toMatchObject({ reached: 14, missing: 6, knownUntil: hours(2) });
    expect(found.readyAt).toBeUndefined();
    expect(curingMinutes(found, start)).toBeUndefined();
  });
  it('counts from the pour, not from the first reading', () => {
    expect(earliestReady(temperatures(30, 10, 10), hours(1), factor, 10).readyAt).toBe(hours(2));
  });
  it('guesses nothing in a gap', () => {
    const { weather } = weatherOf(
      evenRows(start, 60, [{ temperatureC: 10 }, { windMps: 3 }, { temperatureC: 10 }]),
      hours(3),
    );
    expect(earliestReady(weather, start, factor, 15)).toMatchObject({
      missing: 5,
      knownUntil: hours(1),
    });
    expect(maturityBetween(weather, start, hours(3), factor)).toEqual({
      maturity: 20,
      unknown: [{ start: hours(1), end: hours(2) }],
    });
    expect(earliestReady(weather, start - HOUR, factor, 1).readyAt).toBeUndefined();
  });
  it('needs no time for no maturity and refuses less', () => {
    expect(earliestReady([], start, factor, 0).readyAt).toBe(start);
    expect(() => earliestReady([], start, factor, -1)).toThrow(RangeError);
  });
  it('never ready in a frost below the datum', () => {
    expect(earliestReady(temperatures(-5, -5, -5), start, factor, 1)).toMatchObject({
      reached: 0,
      missing: 1,
    });
  });
  const models = [factor, constantEnergy, energyByTemperature, squareLaw];
  it('gains no less in the warm, by every formula', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...models),
        fc.integer({ min: -40, max: 79 }),
        (model, celsius) => {
          expect(maturityRate(model, celsius + 1)).toBeGreaterThanOrEqual(
            maturityRate(model, celsius),
          );
          expect(maturityRate(model, celsius)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
  it('has at the moment it is ready what was asked for, and a minute before it had not', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...models),
        fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 60 }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (model, values, share) => {
          const weather = temperatures(...values);
          const needed =
            share * maturityBetween(weather, start, hours(values.length), model).maturity;
          const { readyAt } = earliestReady(weather, start, model, needed);
          expect(readyAt).toBeDefined();
          const gained = (until: number) => maturityBetween(weather, start, until, model).maturity;
          expect(gained(readyAt!)).toBeGreaterThanOrEqual(needed * (1 - 1e-9) - 1e-6);
          expect(gained(readyAt! - MINUTE)).toBeLessThan(needed);
        },
      ),
    );
  });
});
