// The maturity curve against maturity added up a minute at a time, in any temperatures, gaps among them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { CuringData } from '../../../src/model/index.js';
import { maturityCurve } from '../../../src/rules/conditions/index.js';

/** Temperature-time from 0 °C, so that a minute at so many degrees adds a sixtieth of them. */
const curing = (
  needed: number,
  rows: readonly (readonly [from: number, to: number, celsius: number])[],
  otherwiseC?: number,
): CuringData => ({
  settings: {
    maturity: needed,
    model: { model: 'temperature-time', datumC: 0 },
    source: 'this test',
    sureness: 'our own',
    ...(otherwiseC !== undefined && { otherwiseC }),
  },
  temperatures: rows.map(([from, to, celsius]) => ({
    start: from * MINUTE,
    end: to * MINUTE,
    celsius,
  })),
});

/** Whole degrees, so that a sum of minutes is exact in sixtieths; `undefined` where nothing is known. */
function celsiusAt({ settings, temperatures }: CuringData, minute: number): number | undefined {
  const row = temperatures.find(
    (temperature) => temperature.start <= minute * MINUTE && minute * MINUTE < temperature.end,
  );
  return row ? row.celsius : settings.otherwiseC;
}

const horizon = 6000;

function readyByMinutes(data: CuringData, poured: number): number {
  let sum = 0;
  for (let minute = poured; minute < horizon; minute += 1) {
    if (sum >= data.settings.maturity * 60) return minute;
    const celsius = celsiusAt(data, minute);
    if (celsius === undefined) return Infinity;
    sum += Math.max(0, celsius);
  }
  return Infinity;
}

function latestByMinutes(data: CuringData, ready: number): number {
  let sum = 0;
  for (let minute = ready - 1; minute > -horizon; minute -= 1) {
    const celsius = celsiusAt(data, minute);
    if (celsius === undefined) return -Infinity;
    sum += Math.max(0, celsius);
    if (sum >= data.settings.maturity * 60) return minute;
  }
  return -Infinity;
}

const anyCuring = fc
  .record({
    needed: fc.integer({ min: 1, max: 60 }),
    steps: fc.array(
      fc.record({
        gap: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.integer({ min: 1, max: 90 })),
        minutes: fc.integer({ min: 1, max: 200 }),
        celsius: fc.oneof(fc.integer({ min: -5, max: 30 }), fc.constant(0)),
      }),
      { maxLength: 8 },
    ),
    otherwiseC: fc.option(fc.integer({ min: -2, max: 20 }), { nil: undefined }),
  })
  .map(({ needed, steps, otherwiseC }) => {
    let at = 0;
    const rows = steps.map(({ gap, minutes, celsius }) => {
      const from = at + gap;
      at = from + minutes;
      return [from, at, celsius] as const;
    });
    return curing(needed, rows, otherwiseC);
  });
/** 0 and -0 are one moment. */
const minutes = (at: number): number => at / MINUTE + 0;

describe('the maturity curve', () => {
  it('says the first minute at which any pour is ready', () => {
    fc.assert(
      fc.property(anyCuring, fc.integer({ min: -100, max: 900 }), (data, poured) => {
        const ready = maturityCurve(data).readyAt(poured * MINUTE);
        expect(minutes(ready)).toBe(readyByMinutes(data, poured));
      }),
      { numRuns: 600 },
    );
  });

  it('says the last minute of a pour that is ready by any other', () => {
    fc.assert(
      fc.property(anyCuring, fc.integer({ min: 0, max: 1200 }), (data, ready) => {
        const pour = maturityCurve(data).latestPour(ready * MINUTE);
        expect(minutes(pour)).toBe(latestByMinutes(data, ready));
      }),
      { numRuns: 600 },
    );
  });

  it('is exact at the minute, and rounds a pour between minutes up and back', () => {
    // 20 °C add 20 in an hour: 10 take 30 minutes; 11 take 33.
    const curve = maturityCurve(curing(10, [[0, 600, 20]]));
    expect(minutes(curve.readyAt(0))).toBe(30);
    expect(minutes(curve.latestPour(30 * MINUTE))).toBe(0);
    expect(minutes(curve.readyAt(1))).toBe(31);
    expect(minutes(curve.latestPour(30 * MINUTE - 1))).toBe(-Infinity);
    expect(minutes(curve.latestPour(31 * MINUTE - 1))).toBe(0);
    expect(minutes(maturityCurve(curing(11, [[0, 600, 20]])).readyAt(0))).toBe(33);
  });

  it('goes through cold in which nothing is gained', () => {
    const curve = maturityCurve(
      curing(10, [
        [0, 15, 20],
        [15, 100, -3],
        [100, 600, 20],
      ]),
    );
    expect(minutes(curve.readyAt(0))).toBe(115);
    expect(minutes(curve.latestPour(115 * MINUTE))).toBe(0);
    const never = maturityCurve(curing(10, [[0, 15, 20]], 0));
    expect(never.readyAt(0)).toBe(Infinity);
    expect(never.latestPour(100 * MINUTE)).toBe(-Infinity);
  });
});
