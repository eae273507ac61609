import { expect, it } from 'vitest';
import { HOUR } from '../../src/calendar/index.js';
import {
  chartInForce,
  evenRows,
  gustAtHeight,
  liftingHours,
  reducedLimit,
  weatherOf,
} from '../../src/rules/conditions/index.js';

// Gust at height, a mobile crane maker's manual: formula read, factors worked out.
it.each([
  [10, 1.4],
  [20, 1.502],
  [30, 1.566],
  [50, 1.653],
  [100, 1.78],
])('at %i m the gust is %f times the mean wind at 10 m', (metres, times) => {
  expect(gustAtHeight(1, metres)).toBeCloseTo(times, 3);
  expect(gustAtHeight(8, metres)).toBeCloseTo(8 * gustAtHeight(1, metres), 10);
});

// EN 13000 annex: from memory; figures worked out.
it.each([
  [9, 6.8],
  [9.8, 7.41],
])('20 t with 30 m² and a drag of 1.4 turns a limit of %f into %f m/s', (limit, reduced) => {
  expect(reducedLimit(limit, { tonnes: 20, areaM2: 30, drag: 1.4 })).toBeCloseTo(reduced, 2);
});
// 1.2 m² a tonne allowed: read in the same manual.
it('a load with 1.2 m² of resistance a tonne keeps the limit of the chart, and a smaller one does not raise it', () => {
  expect(reducedLimit(9, { tonnes: 20, areaM2: 20, drag: 1.2 })).toBeCloseTo(9, 10);
  expect(reducedLimit(9, { tonnes: 20, areaM2: 5, drag: 1.2 })).toBe(9);
  expect(reducedLimit(9, { tonnes: 20, areaM2: 20.01, drag: 1.2 })).toBeLessThan(9);
});

// One maker's manual: below 13.4 m/s normal, 13.4-20.1 reduced, above 20.1 cease; read.
it.each([
  [13.39, 'normal'],
  [13.4, 'reduced'],
  [20.1, 'reduced'],
  [20.11, 'cease'],
])('a gust of %f m/s leaves the chart %s in force', (gust, chart) => {
  expect(chartInForce(gust, { reducedFrom: 13.4, ceaseAbove: 20.1 })).toBe(chart);
});

// US Army EM 385-1-1 as quoted in a course: read. 30 minutes after the last lightning.
it('lifting waits 30 minutes after the last lightning', () => {
  const start = Date.UTC(2027, 5, 26, 22);
  const { weather } = weatherOf(
    evenRows(start, 60, [{ windMps: 2 }, { windMps: 2, lightning: true }, { windMps: 2 }]),
    start + 3 * HOUR,
  );
  const lift = { chartLimitMps: 9, heightMetres: 30 };
  expect(liftingHours(weather, lift, { start, end: start + 3 * HOUR })).toMatchObject({
    closed: [{ start: start + HOUR, end: start + 2.5 * HOUR }],
    lostMinutes: 90,
    openMinutes: 90,
  });
});
