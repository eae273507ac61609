// Forecast rows as time closed to lifting, worked out by hand.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { LiftingSettings, WeatherRow } from '../../../src/model/index.js';
import {
  gustOf,
  liftingClosedTime,
  liftingHours,
  liftOf,
  lifts,
  stretchesOf,
} from '../../../src/rules/conditions/index.js';

const settings = (more: Partial<LiftingSettings> = {}): LiftingSettings => ({
  resources: ['crane', 'road-rail crane'],
  chartLimitMps: 9.8,
  heightMetres: 10,
  settleMinutes: 0,
  lightningMinutes: 30,
  asClosedTime: true,
  source: 'this test',
  sureness: 'our own',
  ...more,
});
/** Rows an hour apart from minute 0. */
const hourly = (...rows: readonly Omit<WeatherRow, 'at'>[]): WeatherRow[] =>
  rows.map((row, at) => ({ ...row, at: at * 60 * MINUTE }));
const closed = (set: LiftingSettings, rows: readonly WeatherRow[]): number[][] =>
  liftingClosedTime(set, rows).flatMap((closedTime) =>
    closedTime.stretches.map(({ start, end }) => [start / MINUTE, end / MINUTE]),
  );
const reasons = (set: LiftingSettings, rows: readonly WeatherRow[]): string[] =>
  liftingClosedTime(set, rows).map((closedTime) => closedTime.why.text);

describe('work that lifts', () => {
  it('needs any one of the resources named, among others', () => {
    const needs = (...names: string[]) => ({
      resources: names.map((resource) => ({ resource, amount: 1 })),
    });
    expect(lifts(needs('gang', 'crane'), settings())).toBe(true);
    expect(lifts(needs('road-rail crane'), settings())).toBe(true);
    expect(lifts(needs('gang'), settings())).toBe(false);
    expect(lifts(needs(), settings())).toBe(false);
  });

  it('is held to the load and the cold only where they are given', () => {
    const load = { tonnes: 2, areaM2: 9, drag: 1.2 };
    expect(liftOf(settings())).not.toHaveProperty('load');
    expect(liftOf(settings())).not.toHaveProperty('coldestC');
    expect(liftOf(settings({ load, coldestC: 0 }))).toMatchObject({ load, coldestC: 0 });
    expect(liftOf(settings({ load }))).not.toHaveProperty('tonnes');
  });
});

describe('rows of a forecast', () => {
  it('hold until the next, the last as long as the one before it, a lone one for an hour', () => {
    expect(stretchesOf([])).toEqual([]);
    const ends = (rows: WeatherRow[]) => stretchesOf(rows).map((stretch) => stretch.end / MINUTE);
    expect(ends([{ at: 0 }])).toEqual([60]);
    expect(ends([{ at: 0 }, { at: 20 * MINUTE }, { at: 50 * MINUTE }])).toEqual([20, 50, 80]);
  });
});

describe('time that a forecast closes to lifting', () => {
  it('is none without rows', () => {
    expect(liftingClosedTime(settings(), [])).toEqual([]);
  });

  it('is that of gusts above the limit and of the wait after them, past the last row too', () => {
    const rows = hourly({ gustMps: 5 }, { gustMps: 9.9 }, { gustMps: 9.8 }, { gustMps: 12 });
    expect(closed(settings(), rows)).toEqual([
      [60, 120],
      [180, 240],
    ]);
    expect(closed(settings({ settleMinutes: 15 }), rows)).toEqual([
      [60, 135],
      [180, 255],
    ]);
    expect(closed(settings({ settleMinutes: 45, lightningMinutes: 0 }), rows).at(-1)).toEqual([
      180, 285,
    ]);
    const [, last] = reasons(settings(), rows);
    expect(last).toContain('Gusts to 12.0 m/s at 10 m by the forecast; the limit is 9.8.');
    expect(last).toContain('Source of the limit: this test.');
    expect(last).not.toContain('Lightning');
  });

  it('is that of lightning and the wait after it', () => {
    const rows = hourly({ gustMps: 1, lightning: true }, { gustMps: 1 });
    expect(closed(settings(), rows)).toEqual([[0, 90]]);
    expect(closed(settings({ lightningMinutes: 45 }), rows)).toEqual([[0, 105]]);
    expect(reasons(settings(), rows)[0]).toMatch(/^Lightning is forecast\. Source/);
  });

  it('is that of cold below the limit, where there is one', () => {
    const rows = hourly({ temperatureC: -20.4 }, { temperatureC: -20 }, { gustMps: 3 });
    expect(closed(settings({ coldestC: -20 }), rows)).toEqual([[0, 60]]);
    expect(closed(settings(), rows)).toEqual([]);
    expect(reasons(settings({ coldestC: -20 }), rows)[0]).toMatch(
      /^-20 °C by the forecast; the crane works from -20 °C\./,
    );
  });

  it('says of each stretch what closes it, and of no other', () => {
    const rows = hourly(
      { gustMps: 11 },
      { gustMps: 2, temperatureC: -30 },
      { gustMps: 2 },
      { gustMps: 14 },
    );
    const why = reasons(settings({ coldestC: -20 }), rows);
    expect(why).toHaveLength(2);
    expect(why[0]).toContain('Gusts to 11.0');
    expect(why[0]).toContain('-30 °C');
    expect(why[1]).toContain('Gusts to 14.0');
    expect(why[1]).not.toContain('°C by');
  });
});

describe('the highest gust of a window', () => {
  it('is of the rows that hold in it', () => {
    const weather = stretchesOf(
      hourly({ gustMps: 9 }, { gustMps: 5 }, { gustMps: 4 }, { gustMps: 8 }),
    );
    const lift = { chartLimitMps: 9.8, heightMetres: 10 };
    const highest = (from: number, to: number): number | undefined =>
      liftingHours(weather, lift, { start: from * MINUTE, end: to * MINUTE }).highestGustMps;
    expect(highest(60, 180)).toBeCloseTo(5, 9);
    expect(highest(59, 180)).toBeCloseTo(9, 9);
    expect(highest(60, 181)).toBeCloseTo(8, 9);
    expect(highest(600, 700)).toBeUndefined();
  });
});

describe('the gust at a height', () => {
  it('is the worse of what mean and gust say, and of a calm 0', () => {
    expect(gustOf({ at: 0 }, 30)).toBeUndefined();
    expect(gustOf({ at: 0, gustMps: 0 }, 30)).toBe(0);
    expect(gustOf({ at: 0, windMps: 0 }, 30)).toBe(0);
    expect(gustOf({ at: 0, gustMps: 7 }, 10)).toBeCloseTo(7, 9);
    const mean = gustOf({ at: 0, windMps: 8 }, 10)!;
    expect(gustOf({ at: 0, windMps: 8, gustMps: 1 }, 10)).toBe(mean);
    expect(gustOf({ at: 0, windMps: 8, gustMps: mean + 1 }, 10)).toBeCloseTo(mean + 1, 9);
  });
});
