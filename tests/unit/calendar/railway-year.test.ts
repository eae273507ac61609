import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bankHolidaysEnglandAndWales,
  dateOf,
  dayAt,
  dayFromText,
  dayNumber,
  dayText,
  easterDay,
  holidayAt,
  holidayTimes,
  HOUR,
  periodsTouched,
  periodText,
  railwayPeriod,
  railwayPeriods,
  railwayWeek,
  startOfDay,
  totalMinutes,
  weekdayOf,
  weekdayOfDay,
  weekOneRules,
  type RailwayWeekSettings,
} from '../../../src/calendar/index.js';

const zone = 'Europe/London';
const day = (text: string): number => startOfDay(dayFromText(text)!, zone);
const anyMoment = fc
  .integer({ min: day('1995-04-01') / 60_000, max: day('2040-01-01') / 60_000 })
  .map((n) => n * 60_000);

describe('a day of the calendar', () => {
  it('comes back from its number and its text', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (n) => {
        const { year, month, day: date } = dateOf(n);
        expect(dayNumber(year, month, date)).toBe(n);
        expect(dayFromText(dayText(n))).toBe(n);
        expect(weekdayOfDay(n + 1)).toBe((weekdayOfDay(n) % 7) + 1);
      }),
    );
  });

  it('has the weekday that clocks in its zone show', () => {
    fc.assert(
      fc.property(
        anyMoment,
        fc.constantFrom(zone, 'Pacific/Auckland', 'America/New_York'),
        (at, where) => {
          expect(weekdayOfDay(dayAt(at, where))).toBe(weekdayOf(at, where));
          const n = dayAt(at, where);
          expect(startOfDay(n, where)).toBeLessThanOrEqual(at);
          expect(startOfDay(n + 1, where)).toBeGreaterThan(at);
        },
      ),
    );
  });

  it.each(['2027-02-29', '2027-13-01', '2027-1-1', '27-01-01', 'soon', '2027-00-10'])(
    'is not %s',
    (text) => {
      expect(dayFromText(text)).toBeUndefined();
    },
  );

  it('with numbers that name none is refused', () => {
    expect(() => dayNumber(2027, 2, 29)).toThrow(RangeError);
  });
});

describe('a planning week', () => {
  const saturday = (weekOne: RailwayWeekSettings['weekOne']): RailwayWeekSettings => ({
    weekOne,
    startsOn: 6,
  });

  // 1 April 2026 is a Wednesday, 1 April 2028 a Saturday: the calendar.
  it.each([
    ['holds-1-april', '2026-04-01', 1, 2026],
    ['holds-1-april', '2026-03-28', 1, 2026],
    ['holds-1-april', '2026-03-27', 52, 2025],
    ['first-whole-week', '2026-04-01', 52, 2025],
    ['first-whole-week', '2026-04-04', 1, 2026],
    ['nearest-1-april', '2026-04-01', 53, 2025],
    ['nearest-1-april', '2026-04-04', 1, 2026],
    ['nearest-1-april', '2025-03-29', 1, 2025],
    ['holds-1-april', '2028-04-01', 1, 2028],
    ['first-whole-week', '2028-04-01', 1, 2028],
    ['nearest-1-april', '2028-04-01', 1, 2028],
  ] as const)('by the rule %s on %s is week %i of %i', (rule, date, number, year) => {
    expect(railwayWeek(day(date), zone, saturday(rule))).toMatchObject({ number, year });
  });

  it('starts on the day set, holds the moment asked for, and the next one follows it', () => {
    fc.assert(
      fc.property(
        anyMoment,
        fc.constantFrom(...weekOneRules),
        fc.integer({ min: 1, max: 7 }),
        (at, weekOne, startsOn) => {
          const week = railwayWeek(at, zone, { weekOne, startsOn });
          expect(week.start <= at && at < week.end).toBe(true);
          expect(weekdayOf(week.start, zone)).toBe(startsOn);
          expect(week.number).toBeGreaterThanOrEqual(1);
          expect(week.number).toBeLessThanOrEqual(53);
          const next = railwayWeek(week.end, zone, { weekOne, startsOn });
          expect(next.start).toBe(week.end);
          expect([week.number + 1, 1]).toContain(next.number);
          if (next.number === 1) {
            expect(next.year).toBe(week.year + 1);
            expect(week.number).toBeGreaterThanOrEqual(52);
          }
        },
      ),
    );
  });

  it('lasts an hour less or more when clocks change in it', () => {
    const hours = (date: string): number => {
      const week = railwayWeek(day(date), zone, saturday('holds-1-april'));
      return (week.end - week.start) / HOUR;
    };
    expect([hours('2027-03-27'), hours('2027-05-01'), hours('2027-10-30')]).toEqual([
      167, 168, 169,
    ]);
  });

  it('starts on a day of the week', () => {
    for (const startsOn of [0, 8, 1.5])
      expect(() => railwayWeek(0, zone, { weekOne: 'holds-1-april', startsOn })).toThrow(
        RangeError,
      );
  });
});

describe('a four-week period', () => {
  it('lies in a year of thirteen without a gap; 2 to 12 run Sunday to Saturday', () => {
    for (let year = 1995; year <= 2040; year += 1) {
      const periods = railwayPeriods(year, zone);
      expect(periods.map((period) => period.number)).toEqual([
        1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13,
      ]);
      expect(periods[0]?.start).toBe(day(`${year}-04-01`));
      expect(periods[12]?.end).toBe(day(`${year + 1}-04-01`));
      periods.forEach((period, i) => {
        if (i > 0) expect(period.start).toBe(periods[i - 1]?.end);
        if (i > 0) expect(weekdayOf(period.start, zone)).toBe(7);
        if (i > 0 && i < 12) expect(period.days).toBe(28);
        expect(period.days).toBeGreaterThanOrEqual(24);
        expect(period.days).toBeLessThanOrEqual(32);
      });
    }
  });

  it('holds the moment it is asked for', () => {
    fc.assert(
      fc.property(anyMoment, (at) => {
        const period = railwayPeriod(at, zone);
        expect(period.start <= at && at < period.end).toBe(true);
        expect(periodsTouched({ start: at, end: at + 1 }, zone)).toEqual([period]);
      }),
    );
  });

  it('ends at midnight, so that a Saturday night at its edge lies in two', () => {
    const saturday = { start: day('2026-11-14') + 23 * HOUR, end: day('2026-11-15') + 7 * HOUR };
    expect(periodsTouched(saturday, zone).map(periodText)).toEqual(['P8 2026/27', 'P9 2026/27']);
    const short = { ...saturday, end: day('2026-11-15') };
    expect(periodsTouched(short, zone).map(periodText)).toEqual(['P8 2026/27']);
    expect(periodsTouched({ start: saturday.start, end: saturday.start }, zone)).toEqual([]);
  });

  it('is followed by period 1 of the next year', () => {
    const blockade = { start: day('2027-03-31'), end: day('2027-04-02') };
    expect(periodsTouched(blockade, zone).map(periodText)).toEqual(['P13 2026/27', 'P1 2027/28']);
    expect(periodText({ number: 1, year: 1999 })).toBe('P1 1999/00');
  });
});

describe('holidays', () => {
  // Calendar of the years named; Act from memory (see the module).
  it('of England and Wales are those of 2027, with two days given instead at Christmas', () => {
    expect(bankHolidaysEnglandAndWales(2027).map((holiday) => holiday.date)).toEqual([
      '2027-01-01',
      '2027-03-26',
      '2027-03-29',
      '2027-05-03',
      '2027-05-31',
      '2027-08-30',
      '2027-12-27',
      '2027-12-28',
    ]);
  });

  it.each([
    // 25 December 2022 was a Sunday, 2020 a Friday; 1 January 2022 was a Saturday, 2023 a Sunday.
    [2022, ['2022-12-26', '2022-12-27'], '2022-01-03'],
    [2020, ['2020-12-25', '2020-12-28'], '2020-01-01'],
    [2023, ['2023-12-25', '2023-12-26'], '2023-01-02'],
  ])(
    'that fall on a weekend in %i are given on a working day after it',
    (year, christmas, newYear) => {
      const dates = bankHolidaysEnglandAndWales(year).map((holiday) => holiday.date);
      expect(dates[0]).toBe(newYear);
      expect(dates.slice(-2)).toEqual(christmas);
    },
  );

  it('are eight different working days in every year', () => {
    for (let year = 1990; year <= 2060; year += 1) {
      const dates = bankHolidaysEnglandAndWales(year).map((holiday) => holiday.date);
      expect(new Set(dates).size).toBe(8);
      for (const date of dates) expect(weekdayOfDay(dayFromText(date)!)).toBeLessThanOrEqual(5);
    }
  });

  it('have Easter on a Sunday between 22 March and 25 April', () => {
    for (let year = 1900; year <= 2200; year += 1) {
      const easter = easterDay(year);
      expect(weekdayOfDay(dayFromText(easter)!)).toBe(7);
      expect(easter.slice(5) >= '03-22' && easter.slice(5) <= '04-25').toBe(true);
    }
  });

  it('are data: any list says what day a moment falls on and what time it takes', () => {
    const own = [
      { date: '2027-03-28', name: 'Spring fair' },
      { date: '2027-03-29', name: 'Day after' },
    ];
    expect(holidayAt(day('2027-03-28') + HOUR, zone, own)?.name).toBe('Spring fair');
    expect(holidayAt(day('2027-03-30'), zone, own)).toBeUndefined();
    // Clocks go forward on the 28th: 23 hours.
    expect(totalMinutes(holidayTimes(own, zone))).toBe((23 + 24) * 60);
    expect(() => holidayTimes([{ date: '2027-02-30', name: '' }], zone)).toThrow(RangeError);
  });
});
