import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  clockChanges,
  dayFromText,
  easterDay,
  HOUR,
  isoText,
  readings,
  weekdayOfDay,
} from '../../src/calendar/index.js';
import { at } from '../helpers/clock.js';

/** Elapsed hours between two local times, by this project and by a second time library. */
function hours(from: string, to: string, zone: string): { ours: number; theirs: number } {
  const ours = (text: string): number => at(text, 'reject', zone);
  const theirs = (text: string): number =>
    Temporal.PlainDateTime.from(text).toZonedDateTime(zone, { disambiguation: 'reject' })
      .epochMilliseconds;
  return {
    ours: (ours(to) - ours(from)) / HOUR,
    theirs: (theirs(to) - theirs(from)) / HOUR,
  };
}

const plus = (date: string, days: number): string =>
  Temporal.PlainDate.from(date).add({ days }).toString();

// Summer Time Act 1972 s 1 as amended by the Summer Time Order 2002 (SI 2002/262) art 2: from 01:00 GMT on the last
// Sunday in March to 01:00 GMT on the last Sunday in October (read). Elapsed hours: worked out from the tz database.
const table: readonly [string, number, number, number, number][] = [
  ['2024-03-31', 7, 8.5, 4, 53],
  ['2024-10-27', 9, 10.5, 6, 55],
  ['2025-03-30', 7, 8.5, 4, 53],
  ['2025-10-26', 9, 10.5, 6, 55],
  ['2026-03-29', 7, 8.5, 4, 53],
  ['2026-10-25', 9, 10.5, 6, 55],
  ['2027-03-28', 7, 8.5, 4, 53],
  ['2027-10-31', 9, 10.5, 6, 55],
  ['2028-03-26', 7, 8.5, 4, 53],
  ['2028-10-29', 9, 10.5, 6, 55],
  ['2029-03-25', 7, 8.5, 4, 53],
  ['2029-10-28', 9, 10.5, 6, 55],
  ['2030-03-31', 7, 8.5, 4, 53],
  ['2030-10-27', 9, 10.5, 6, 55],
  // A night on which nothing changes.
  ['2027-05-02', 8, 9.5, 5, 54],
];

describe('windows over the clock changes of Great Britain, 2024 to 2030', () => {
  it.each(table)('on Sunday %s last as long as the table says', (sunday, a, b, c, d) => {
    const zone = 'Europe/London';
    const saturday = plus(sunday, -1);
    const found = [
      hours(`${saturday}T23:00`, `${sunday}T07:00`, zone),
      hours(`${saturday}T22:45`, `${sunday}T08:15`, zone),
      hours(`${sunday}T00:30`, `${sunday}T05:30`, zone),
      hours(`${plus(sunday, -2)}T22:00`, `${plus(sunday, 1)}T04:00`, zone),
    ];
    expect(found.map((item) => item.ours)).toEqual([a, b, c, d]);
    expect(found.map((item) => item.theirs)).toEqual([a, b, c, d]);
    expect(weekdayOfDay(dayFromText(sunday)!)).toBe(7);
  });

  it('are at 01:00 GMT on the last Sundays of March and October', () => {
    const changes = clockChanges(Date.UTC(2024, 0), Date.UTC(2031, 0), 'Europe/London');
    expect(changes.map((change) => isoText(change.at, 'UTC').slice(0, 16))).toEqual(
      table.slice(0, -1).map(([sunday]) => `${sunday}T01:00`),
    );
    for (const [sunday] of table.slice(0, -1))
      expect(plus(sunday, 7).slice(5, 7)).not.toBe(sunday.slice(5, 7));
  });

  it('leave 01:00 to 01:59 out in March, and show it twice in October', () => {
    for (const minute of [0, 30, 59]) {
      expect(
        readings({ year: 2027, month: 3, day: 28, hour: 1, minute }, 'Europe/London').kind,
      ).toBe('none');
      expect(
        readings({ year: 2027, month: 10, day: 31, hour: 1, minute }, 'Europe/London').kind,
      ).toBe('two');
    }
    expect(
      readings({ year: 2027, month: 3, day: 28, hour: 2, minute: 0 }, 'Europe/London').kind,
    ).toBe('one');
    expect(
      readings({ year: 2027, month: 10, day: 31, hour: 2, minute: 0 }, 'Europe/London').kind,
    ).toBe('one');
  });
});

describe('windows over the clock changes of other countries', () => {
  // Directive 2000/84/EC: the same instant in all member states. The others: tz database, United States rule from memory.
  it.each([
    ...table.map(([sunday, a]) => ['Europe/Berlin', sunday, a] as const),
    ['America/New_York', '2026-03-08', 7],
    ['America/New_York', '2026-11-01', 9],
    ['Australia/Sydney', '2026-04-05', 9],
    ['Australia/Sydney', '2026-10-04', 7],
    ['Australia/Brisbane', '2026-10-04', 8],
    ['America/Phoenix', '2026-03-08', 8],
  ] as const)('in %s from Saturday 23:00 to 07:00 on %s last %f h', (zone, sunday, expected) => {
    const found = hours(`${plus(sunday, -1)}T23:00`, `${sunday}T07:00`, zone);
    expect(found).toEqual({ ours: expected, theirs: expected });
  });
});

describe('a blockade near the threshold of sixty hours', () => {
  // Worked out: Friday 22:00 to Monday 10:00 is 60 h on the clock.
  it.each([
    ['2027-05-07', 60],
    ['2027-03-26', 59],
    ['2027-10-29', 61],
  ])('from Friday %s at 22:00 to Monday at 10:00 lasts %i h', (friday, expected) => {
    const found = hours(`${friday}T22:00`, `${plus(friday, 3)}T10:00`, 'Europe/London');
    expect(found).toEqual({ ours: expected, theirs: expected });
  });
});

describe('Easter', () => {
  // Calendar, as noted beside the table of clock changes.
  it('is on the night of the spring change in 2024 and 2027, and a week after it in 2029', () => {
    expect([easterDay(2024), easterDay(2027), easterDay(2029)]).toEqual([
      '2024-03-31',
      '2027-03-28',
      '2029-04-01',
    ]);
  });
});
