import { describe, expect, it } from 'vitest';
import {
  dayText,
  instantOf,
  isoText,
  localText,
  localTimeOf,
  type Instant,
} from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import {
  bookingRulesSchema,
  exampleBooking,
  inTwoText,
  milestonesFor,
  restrictionClass,
  timetableChange,
  timetableSaturday,
} from '../../src/rules/booking/index.js';

const zone = 'Europe/London';
const on = (text: string, hour = 0): Instant => {
  const [year, month, day] = text.split('-').map(Number) as [number, number, number];
  return instantOf({ year, month, day, hour, minute: 0 }, zone, 'earlier');
};
const windowOn = (day: string, hour = 0): AccessWindow => ({
  id: 'W',
  title: '',
  start: on(day, hour),
  end: on(day, hour) + 6 * 3_600_000,
  zone,
  lines: [],
  isolation: [],
  status: 'requested',
  trainsAfter: '',
});
const due = (window: AccessWindow, name: string, restriction?: string) => {
  const found = milestonesFor(window, exampleBooking, 0, {
    ...(restriction !== undefined && { restriction }),
  }).find((milestone) => milestone.milestone === name);
  return found && localText(localTimeOf(found.due, zone));
};

// Decision (EU) 2017/2075, table on a European infrastructure managers' page: read. Boundaries worked out.
describe('the class of a capacity restriction', () => {
  it.each([
    [31, 51, 'major'],
    [30, 60, 'high'],
    [31, 50, 'high'],
    [8, 31, 'high'],
    [8, 30, 'minor'],
    [7, 51, 'medium'],
    [7, 50, 'minor'],
    [2, 10, 'less than minor'],
    // Either side of every threshold.
    [31, 30, 'minor'],
    [31, 30.1, 'high'],
    [1, 50.1, 'medium'],
    [400, 10.1, 'minor'],
    [400, 10, 'less than minor'],
    [400, 0, 'less than minor'],
  ])('of %i days with %f %% of the trains is %s', (days, share, name) => {
    expect(restrictionClass(days, share, exampleBooking)).toBe(name);
  });
  it('refuses what is no restriction', () => {
    expect(() => restrictionClass(0, 50, exampleBooking)).toThrow(RangeError);
    expect(() => restrictionClass(3, 101, exampleBooking)).toThrow(RangeError);
  });
});

// Directive 2012/34/EU Annex VII, midnight of the second Saturday in December: from memory; dates worked out.
describe('the change of timetable', () => {
  it.each([
    [2026, '2026-12-12'],
    [2027, '2027-12-11'],
    [2028, '2028-12-09'],
    [2029, '2029-12-08'],
    [2030, '2030-12-14'],
  ])('of %i is at the end of %s', (year, saturday) => {
    expect(timetableChange(year, zone)).toBe(on(saturday) + 24 * 3_600_000);
  });
  it('is that of the place, not of Greenwich', () => {
    expect(isoText(timetableChange(2026, 'Europe/Berlin'), 'Europe/Berlin')).toBe(
      '2026-12-13T00:00:00+01:00',
    );
  });
  it('that governs a window is the last one before it', () => {
    expect(dayText(timetableSaturday(on('2027-08-01'), zone))).toBe('2026-12-12');
    expect(dayText(timetableSaturday(on('2026-12-13') - 1, zone))).toBe('2025-12-13');
    expect(dayText(timetableSaturday(on('2026-12-13'), zone))).toBe('2026-12-12');
  });
});

// Path alteration advice T-135 and T-45, a European infrastructure managers' page: read. Dates worked out.
it.each([
  ['Passenger operators told of altered paths', '2027-03-19 23:59'],
  ['Freight operators told of altered paths', '2027-06-17 23:59'],
])('a restriction that starts on 1 Aug 2027: %s by %s', (name, day) => {
  expect(due(windowOn('2027-08-01'), name, 'minor')).toBe(day);
});

// and 15 days, X-12, X-4 of the timetable from 12 Dec 2026: read; dates worked out.
it.each([
  ['major', 'First published, 24 months before the timetable', '2024-12-12 23:59'],
  ['major', 'Coordinated across networks, 18 months before the timetable', '2025-06-12 23:59'],
  [
    'high',
    'Coordinated across networks, 13 months and 15 days before the timetable',
    '2025-10-28 23:59',
  ],
  ['medium', 'Published 12 months before the timetable', '2025-12-12 23:59'],
  ['minor', 'Published 4 months before the timetable', '2026-08-12 23:59'],
])('a %s restriction in August 2027: %s, by %s', (restriction, name, day) => {
  expect(due(windowOn('2027-08-01'), name, restriction)).toBe(day);
});
it('a minor restriction need not be published two years ahead', () => {
  const name = 'First published, 24 months before the timetable';
  expect(due(windowOn('2027-08-01'), name, 'minor')).toBeUndefined();
});

// A rail forum post quoting the network code, part D (2019): read second-hand; TW-12 at 22:00: read in a clause
// library. Dates of the example worked out.
describe('a possession on Saturday 26 June 2027', () => {
  const window = windowOn('2027-06-26', 22);
  it.each([
    ['Possession planning begins', '2026-11-28 23:59'],
    ['Operators bid amended trains', '2027-02-20 23:59'],
    ['Amended trains offered', '2027-03-20 23:59'],
    ['In the working timetable', '2027-04-03 22:00'],
    ['Notified for compensation at the lower band', '2027-01-23 23:59'],
  ])('%s by %s', (name, day) => {
    expect(due(window, name)).toBe(day);
  });
  it('is 26 weeks after 26 Dec 2026, but its period, from 30 May, is confirmed four weeks before that', () => {
    expect(
      localText(localTimeOf(on('2027-06-26') - 26 * 7 * 86_400_000 + 3_600_000, zone)),
    ).toContain('2026-12-26');
    expect(due(window, 'Period possession plan confirmed')).toBe('2026-11-29 23:59');
  });
});

// Periods: a data package citing the regulator, read. That a Saturday night at an edge lies in two: worked out.
describe('a Saturday night at the edge of a period', () => {
  const confirmed = (day: string, hour: number) =>
    milestonesFor(windowOn(day, hour), exampleBooking, 0).find(
      (milestone) => milestone.milestone === 'Period possession plan confirmed',
    )!;
  it('from 14 to 15 Nov 2026 is booked with P8, from 18 Oct, and says that it lies in two periods', () => {
    const found = confirmed('2026-11-14', 22);
    expect(localText(localTimeOf(found.due, zone))).toBe('2026-04-19 23:59');
    expect(found.inTwo).toBe(true);
    expect(inTwoText(found)).toContain('from the first four-week period');
  });
  it('a week earlier, or that ends at the edge, lies in one', () => {
    expect(confirmed('2026-11-07', 22).inTwo).toBeUndefined();
    expect(confirmed('2026-11-14', 18).inTwo).toBeUndefined();
  });
  it('an hour after the edge is booked with P9, from 15 Nov', () => {
    expect(localText(localTimeOf(confirmed('2026-11-15', 1).due, zone))).toBe('2026-05-17 23:59');
  });
});

// Network code part D, D-40 priority date and D-26 publication: from memory, so they are no part of the example.
// Dates worked out from the change on 12 Dec 2026.
it.each([
  [40, '2026-03-07 23:59'],
  [26, '2026-06-13 23:59'],
])('%i weeks before the change of timetable of 12 Dec 2026 is %s', (weeks, day) => {
  const book = bookingRulesSchema.parse({
    schema: 1,
    name: 'timetable',
    milestones: [
      {
        milestone: 'D',
        before: 'timetable change',
        weeks,
        source: 'memory',
        sureness: 'from memory',
      },
    ],
  });
  const [one] = milestonesFor(windowOn('2027-06-26', 22), book, 0);
  expect(localText(localTimeOf(one!.due, zone))).toBe(day);
});

// Dates worked out from the calendar for a planning week that begins on a Saturday; that lead times may be counted so is
// common practice, and where the week begins was not found in a source: both are settings.
describe('a lead time of 26 weeks counted from the planning week', () => {
  const lead = (weeksFrom: 'window' | 'railway week', days = 0) =>
    bookingRulesSchema.parse({
      schema: 1,
      name: 'Test',
      weeksFrom,
      weekStarts: 'sat',
      milestones: [
        { milestone: 'M', weeks: days > 0 ? 0 : 26, days, source: 'test', sureness: 'read' },
      ],
    });
  const dueDay = (day: string, book: ReturnType<typeof lead>, hour = 23): string =>
    localText(localTimeOf(milestonesFor(windowOn(day, hour), book, 0)[0]!.due, zone)).slice(0, 10);

  it.each([
    ['2027-07-02', '2026-12-26', 6],
    ['2027-06-30', '2026-12-26', 4],
    ['2027-06-27', '2026-12-26', 1],
    ['2027-06-26', '2026-12-26', 0],
    ['2027-07-03', '2027-01-02', 0],
  ])('for %s is %s, %i days before counting from the day', (day, first, sooner) => {
    const [week, own] = [dueDay(day, lead('railway week')), dueDay(day, lead('window'))];
    expect(week).toBe(first);
    expect((Date.parse(own) - Date.parse(week)) / 86_400_000).toBe(sooner);
  });

  it('says that it is, and leaves lead times of days with the window', () => {
    const [found] = milestonesFor(windowOn('2027-07-02'), lead('railway week'), 0);
    expect(found!.before).toBe('railway week');
    expect(dueDay('2027-07-02', lead('railway week', 135))).toBe('2027-02-17');
    expect(milestonesFor(windowOn('2027-07-02'), lead('railway week', 135), 0)[0]!.before).toBe(
      'window',
    );
  });
});
