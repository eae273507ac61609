import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import {
  dailyBands,
  DAY,
  instantOf,
  isoText,
  subtract,
  totalMinutes,
  unionOf,
} from '../../src/calendar/index.js';
import { ruleSetSchema, weekdays } from '../../src/model/index.js';
import {
  ambientCategory,
  combinedDb,
  consentDates,
  distanceDb,
  levelOfPower,
  loudHours,
  noiseLimitsSchema,
  onTimeDb,
  plantLevelSchema,
  powerLevel,
  predict,
  type NoiseSource,
} from '../../src/rules/noise/index.js';

const sample = (name: string) =>
  readFileSync(new URL(`../../sample-csv/${name}`, import.meta.url), 'utf8');
const limits = (category: string) =>
  noiseLimitsSchema.parse(JSON.parse(sample(`limits/noise-category-${category}.json`)));
const plant = Papa.parse<Record<string, string>>(sample('plant-noise.csv').trim(), {
  header: true,
}).data.map((row) =>
  plantLevelSchema.parse({
    plant: row['plant'],
    levelDb: Number(row['level at 10 m']),
    source: row['source'],
    sureness: row['sureness'],
  }),
);

// Energy sum: formula from memory, sums worked out.
it.each([
  [[70, 70], 73.01],
  [[75, 70], 76.19],
  [[80, 80, 80], 84.77],
  [[88, 80], 88.64],
  [[60, 50], 60.41],
])('%j dB together are %f dB', (levels, total) => {
  expect(combinedDb(levels)).toBeCloseTo(total, 2);
});

// Lw = Lp + 20 log10(r) + 8, example 81 + 20 + 8 = 109; a road agency's construction noise page: read.
it('81 dB at 10 m is a sound power level of 109 dB, and back', () => {
  expect(powerLevel(81)).toBeCloseTo(109, 10);
  expect(levelOfPower(109)).toBeCloseTo(81, 10);
  expect(levelOfPower(109, 40)).toBeCloseTo(81 + distanceDb(40, 'hard'), 10);
});

// On-time, the same page: read; the page rounds. 70 dB for three quarters of the hour.
it('70 dB for 75 % of the time is 68.75 dB', () => {
  expect(70 + onTimeDb(75)).toBeCloseTo(68.75, 2);
});

// BS 5228-1 F.2: from memory. Figures worked out.
it.each([
  [40, 'hard', -12.04],
  [10, 'hard', 0],
  [40, 'soft', -13.05],
  [25, 'soft', -7.95],
] as const)(
  'at %i m over %s ground a level is %f dB from that at 10 m',
  (metres, ground, change) => {
    expect(distanceDb(metres, ground)).toBeCloseTo(change, 2);
  },
);

describe('a breaker and an excavator at 40 m over hard ground', () => {
  // Plant: BS 5228-1 Annex C in a teaching file, read second-hand. The rest worked out.
  const source = (name: string, onTimePercent: number, screeningDb: number): NoiseSource => ({
    plant: name,
    levelDb: plant.find((item) => item.plant.startsWith(name))!.levelDb,
    metres: 40,
    ground: 'hard',
    screeningDb,
    onTimePercent,
  });
  const both = (screening: number) => [
    source('Excavator-mounted hydraulic breaker', 25, screening),
    source('Tracked excavator', 60, screening),
  ];
  it('are 72.94, 68.74 and together 74.34 dB at the front of the house', () => {
    const { totalDb, sources, note } = predict(both(0), { facade: true });
    expect(sources.map((level) => level.levelDb.toFixed(2))).toEqual(['72.94', '68.74']);
    expect(sources[0]!.at10mDb + sources[0]!.distanceDb).toBeCloseTo(75.96, 2);
    expect(sources[1]!.at10mDb + sources[1]!.distanceDb).toBeCloseTo(67.96, 2);
    expect(sources.map((level) => level.onTimeDb.toFixed(2))).toEqual(['-6.02', '-2.22']);
    expect(totalDb).toBeCloseTo(74.34, 2);
    expect(note).toContain('Screening only');
  });
  it('are over every night threshold, and still over category C when hidden by 10 dB', () => {
    for (const category of ['a', 'b', 'c'])
      expect(loudHours('Break out', both(0), limits(category)).periods[0]!.overDb).toBeGreaterThan(
        0,
      );
    const night = loudHours('Break out', both(10), limits('c')).periods[0]!;
    expect(night.levelDb).toBeCloseTo(64.34, 2);
    expect(night.overDb).toBeCloseTo(9.34, 2);
  });
});

// Table E.1: from memory, so the thresholds are data; the boundaries between categories follow the wording.
describe('the category of a dwelling', () => {
  it.each([
    [37, 'A'],
    [42.4, 'A'],
    [42.5, 'B'],
    [45, 'B'],
    [47.4, 'B'],
    [47.5, 'C'],
    [61, 'C'],
  ])('with %f dB at night is %s', (ambient, category) => {
    expect(ambientCategory(ambient, { A: 45, B: 50, C: 55 })).toBe(category);
  });
  it.each([
    ['a', [45, 55, 65]],
    ['b', [50, 60, 70]],
    ['c', [55, 65, 75]],
  ])('%s has its three thresholds in the sample file', (category, values) => {
    expect(limits(category).periods.map((period) => period.limitDb)).toEqual(values);
  });
});

it('the plant list gives six levels at 10 m, each with its reference', () => {
  // BS 5228-1 Annex C, quoted in a teaching file: read second-hand.
  expect(plant.map((item) => item.levelDb)).toEqual([88, 83, 86, 73, 80, 81]);
  for (const item of plant) expect(item.source).toContain('C.5 ref');
});

// Control of Pollution Act 1974 s61, 28 days: from memory; dates worked out.
it('prior consent for a start on 26 June 2027 is applied for by 29 May', () => {
  const zone = 'Europe/London';
  const on = (month: number, day: number, hour: number) =>
    instantOf({ year: 2027, month, day, hour, minute: 0 }, zone, 'earlier');
  const dates = (now: number) => consentDates(on(6, 26, 22), now, { zone, talkDays: 14 });
  expect(isoText(dates(0).applyBy, zone)).toBe('2027-05-29T00:00:00+01:00');
  expect(isoText(dates(0).talkBy, zone)).toBe('2027-05-15T00:00:00+01:00');
  expect(dates(on(5, 15, 23)).state).toBe('in time');
  expect(dates(on(5, 16, 0)).state).toBe('too late for talks');
  expect(dates(on(5, 29, 23))).toMatchObject({ state: 'too late for talks', minutesLeft: 60 });
  expect(dates(on(5, 30, 0))).toMatchObject({ state: 'too late', minutesLeft: 0 });
});

// A city council's page on construction hours: read. 75, 65, and at night 45 or the ambient level if that is higher.
describe('limits of a city council', () => {
  const council = noiseLimitsSchema.parse(JSON.parse(sample('limits/noise-council.json')));
  const saw = (levelDb: number): NoiseSource => ({
    plant: 'Saw',
    levelDb: levelDb - 3,
    metres: 10,
    ground: 'hard',
    screeningDb: 0,
    onTimePercent: 100,
  });
  const closed = (levelDb: number, ambient = {}) =>
    loudHours('Cut', [saw(levelDb)], council, ambient).curfews.map((curfew) => curfew.from);
  it('close what is above 75 always, above 65 in the evening, above 45 at night', () => {
    expect(closed(75.01)).toEqual(['07:00', '19:00', '23:00']);
    expect(closed(75)).toEqual(['19:00', '23:00']);
    expect(closed(65)).toEqual(['23:00']);
    expect(closed(45)).toEqual([]);
  });
  it('give way at night, and only then, to a level that is there already', () => {
    expect(closed(52, { Night: 52 })).toEqual([]);
    expect(closed(52.01, { Night: 52 })).toEqual(['23:00']);
    expect(closed(46, { Night: 40 })).toEqual(['23:00']);
    expect(closed(66, { Evening: 70, Night: 70 })).toEqual(['19:00']);
  });
});

// Usual site hours, two councils' pages: read. Monday to Friday 08:00-18:00, Saturday 08:00-13:00.
it('usual site hours leave 55 hours of a week to loud work', () => {
  const rules = ruleSetSchema.parse(JSON.parse(sample('limits/noise-usual-hours.json')));
  const monday = Date.UTC(2027, 5, 21);
  const week = { start: monday, end: monday + 7 * DAY };
  const minute = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
  const shut = unionOf(
    rules.curfews.flatMap((curfew) =>
      dailyBands(
        {
          fromMinute: minute(curfew.from),
          toMinute: minute(curfew.to),
          days: (curfew.days ?? weekdays).map((day) => weekdays.indexOf(day) + 1),
        },
        week,
        'UTC',
      ),
    ),
  );
  const open = subtract([week], shut);
  expect(totalMinutes(open)).toBe(55 * 60);
  expect(open.map((interval) => isoText(interval.start, 'UTC').slice(8, 16))).toEqual([
    '21T08:00',
    '22T08:00',
    '23T08:00',
    '24T08:00',
    '25T08:00',
    '26T08:00',
  ]);
});
