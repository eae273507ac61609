// The edges at which one answer turns into the next.
import { describe, expect, it } from 'vitest';
import {
  clockChanges,
  dayFromText,
  dayNumber,
  holidayTimes,
  HOUR,
  instantOf,
  isLocalTime,
  isZone,
  minuteOfClock,
  MINUTE,
  momentOn,
  overlaps,
  railwayPeriod,
  railwayPeriods,
  startOfDay,
} from '../../../src/calendar/index.js';

const zone = 'Europe/London';
/** Clocks go forward at 01:00 UTC on the last Sunday of March, European summer time directive 2000/84/EC, article 2. */
const forward = Date.parse('2027-03-28T01:00:00Z');

describe('two intervals', () => {
  it('that touch share no moment, whichever comes first', () => {
    expect(overlaps({ start: 0, end: 1 }, { start: 1, end: 2 })).toBe(false);
    expect(overlaps({ start: 1, end: 2 }, { start: 0, end: 1 })).toBe(false);
    expect(overlaps({ start: 0, end: 2 }, { start: 1, end: 3 })).toBe(true);
  });
});

describe('a day', () => {
  it.each([
    [2027, 13, 1],
    [2027, 0, 1],
    [2027, 2, 29],
    [2027, 4, 31],
    [2027, 1, 0],
    [2027.5, 1, 1],
  ])('with the numbers %d, %d, %d is refused', (year, month, day) => {
    expect(() => dayNumber(year, month, day)).toThrow(RangeError);
  });

  it('is not read from a text of ten letters that names a month of the year 10000', () => {
    expect(dayFromText('+010000-01')).toBeUndefined();
  });

  it('is the same reached by minutes of another, clock changes between them and all', () => {
    const day = dayFromText('2027-03-26')!;
    for (const apart of [-6, -4, -1, 0, 1, 2, 3, 5, 9]) {
      for (const from of [day - 2, day, day + 3, day + 6])
        expect(momentOn(from, apart * 1440, zone), `${apart} days`).toBe(
          startOfDay(from + apart, zone),
        );
    }
  });
});

describe('a holiday', () => {
  it('on a day that is none is refused, and named', () => {
    expect(() => holidayTimes([{ date: '2027-02-30', name: 'None' }], zone)).toThrow(
      'no such day: "2027-02-30"',
    );
  });
});

describe('a local time', () => {
  const time = (year: number, month: number, day: number, hour = 0, minute = 0) => ({
    year,
    month,
    day,
    hour,
    minute,
  });

  it.each([
    [time(2027, 1, 1), true],
    [time(2027, 12, 28, 23, 59), true],
    [time(2027, 12, 31, 23, 59), true],
    [time(2028, 2, 29), true],
    [time(0, 1, 1), true],
    [time(99, 12, 31, 12, 30), true],
    [time(2027, 13, 1), false],
    [time(2027, 0, 1), false],
    [time(2027, 1, 0), false],
    [time(2027, 1, 1, 24), false],
    [time(2027, 1, 1, 0, 60), false],
    [time(2027, 1, 1, -1), false],
    [time(2027, 2, 29), false],
    [time(2027, 4, 31), false],
    [time(2027, 1, 31, 24), false],
    [time(2027, 1, 30, 5, 60), false],
    [time(2027, 1, 31, 5, -1), false],
    [time(2027, 1.5, 1), false],
    [time(Number.NaN, 1, 1), false],
  ])('%j is one: %s', (local, is) => {
    expect(isLocalTime(local)).toBe(is);
  });

  it('of the first centuries is of them and not of the 20th', () => {
    expect(new Date(instantOf(time(50, 6, 7, 8, 9), 'UTC', 'reject')).toISOString()).toBe(
      '0050-06-07T08:09:00.000Z',
    );
    expect(new Date(instantOf(time(100, 6, 7, 8, 9), 'UTC', 'reject')).toISOString()).toBe(
      '0100-06-07T08:09:00.000Z',
    );
  });
});

describe('a zone', () => {
  it('is one by its name, asked for the first time and again', () => {
    for (const name of ['Asia/Kathmandu', 'Asia/Kathmandu', zone]) expect(isZone(name)).toBe(true);
    for (const name of ['Nowhere/City', '', 'Z']) expect(isZone(name)).toBe(false);
  });
});

describe('a clock text', () => {
  it.each([
    ['00:00', 0],
    ['00:07', 7],
    ['09:30', 570],
    ['23:45', 1425],
    ['24:00', 1440],
  ])('%s is %d minutes past midnight', (text, minutes) => {
    expect(minuteOfClock(text)).toBe(minutes);
  });
});

describe('clock changes', () => {
  it('are found once, however the stretch lies about them', () => {
    for (let before = 0; before <= 26 * 60; before += 1) {
      const from = forward - before * MINUTE;
      const found = clockChanges(from, forward + 13 * HOUR, zone);
      expect(found).toEqual(before === 0 ? [] : [{ at: forward, forwardMinutes: 60 }]);
    }
  });

  it('are told to the minute in a stretch that begins or ends between minutes', () => {
    const change = { at: forward, forwardMinutes: 60 };
    expect(clockChanges(forward - 30_000, forward + HOUR, zone)).toEqual([change]);
    expect(clockChanges(forward - HOUR, forward + 30_000, zone)).toEqual([change]);
  });
});

describe('a doubtful local time', () => {
  it('is refused in the words that fit it', () => {
    const at = (month: number, day: number) => ({ year: 2027, month, day, hour: 1, minute: 30 });
    expect(() => instantOf(at(3, 28), zone, 'reject')).toThrow('2027-03-28 01:30 does not exist');
    expect(() => instantOf(at(10, 31), zone, 'reject')).toThrow('2027-10-31 01:30 happens twice');
  });
});

describe('a four-week period', () => {
  it('holds the moment it starts and not the one it ends', () => {
    for (const { number, start, end } of railwayPeriods(2026, zone)) {
      expect(railwayPeriod(start, zone).number).toBe(number);
      expect(railwayPeriod(end - 1, zone).number).toBe(number);
      expect(railwayPeriod(end, zone).number).toBe((number % 13) + 1);
    }
  });
});
