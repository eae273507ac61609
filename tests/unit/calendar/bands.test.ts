import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dailyBands,
  HOUR,
  isoText,
  localTimeOf,
  MINUTE,
  totalMinutes,
  weekdayOf,
  type DailyBand,
  type Interval,
} from '../../../src/calendar/index.js';
import { at, zone } from '../../helpers/clock.js';
import { cases } from '../../helpers/cases.js';

const shown = (band: DailyBand, from: string, to: string): string[] =>
  dailyBands(band, { start: at(from), end: at(to) }, zone).map(
    (interval) =>
      `${isoText(interval.start, zone).slice(5, 16)} ${isoText(interval.end, zone).slice(5, 16)}`,
  );

describe('a band that comes back every day', () => {
  it('counts for a night that began before the range', () => {
    expect(
      shown({ fromMinute: 23 * 60, toMinute: 7 * 60 }, '2027-05-02 01:00', '2027-05-02 23:30'),
    ).toEqual(['05-02T01:00 05-02T07:00', '05-02T23:00 05-02T23:30']);
  });

  it('belongs to the day it starts on', () => {
    // 2027-05-01 is a Saturday.
    expect(
      shown(
        { fromMinute: 23 * 60, toMinute: 7 * 60, days: [6] },
        '2027-04-30 12:00',
        '2027-05-03 12:00',
      ),
    ).toEqual(['05-01T23:00 05-02T07:00']);
  });

  it('that ends when it starts lasts the day round', () => {
    expect(
      shown({ fromMinute: 360, toMinute: 360, days: [6] }, '2027-04-30 12:00', '2027-05-04 12:00'),
    ).toEqual(['05-01T06:00 05-02T06:00']);
  });

  it('may start or end at 24:00, midnight at the end of its day', () => {
    const range = ['2027-04-30 12:00', '2027-05-04 12:00'] as const;
    expect(shown({ fromMinute: 1200, toMinute: 1440, days: [6] }, ...range)).toEqual([
      '05-01T20:00 05-02T00:00',
    ]);
    expect(shown({ fromMinute: 1440, toMinute: 1440, days: [6] }, ...range)).toEqual([
      '05-02T00:00 05-03T00:00',
    ]);
  });

  it('of a whole day every day leaves nothing out', () => {
    const range = { start: at('2027-10-30 12:34'), end: at('2027-11-02 01:02') };
    expect(dailyBands({ fromMinute: 0, toMinute: 1440 }, range, zone)).toEqual([range]);
  });

  // Summer Time Order 2002 (SI 2002/262): 28 March and 31 October 2027.
  it.each([
    ['over the spring change is an hour shorter', 23 * 60, 7 * 60, '2027-03-27', 7 * 60],
    ['over the autumn change is an hour longer', 23 * 60, 7 * 60, '2027-10-30', 9 * 60],
    ['from a skipped time starts at the change', 24 * 60 + 90, 300, '2027-03-27', 180],
    ['to a skipped time ends at the change', 23 * 60, 90, '2027-03-27', 120],
    ['from a doubled time starts the first time it is shown', 24 * 60 + 90, 300, '2027-10-30', 270],
    ['to a doubled time ends the second time it is shown', 23 * 60, 90, '2027-10-30', 210],
  ])('%s', (_, fromMinute, toMinute, evening, minutes) => {
    const next = fromMinute > 1440;
    const range = { start: at(`${evening} 20:00`), end: at(`${evening} 20:00`) + 15 * HOUR };
    const band = { fromMinute: next ? fromMinute - 1440 : fromMinute, toMinute };
    expect(totalMinutes(dailyBands(band, range, zone))).toBe(minutes);
  });

  it('that ends at a midnight shown twice ends the second time, two days after the day it belongs to', () => {
    // tz database: in the Azores clocks go back from 01:00 to 00:00 on 31 October 2027, at 01:00 UTC.
    const range = { start: Date.UTC(2027, 9, 31, 0, 30), end: Date.UTC(2027, 9, 31, 3) };
    expect(
      dailyBands({ fromMinute: 1440, toMinute: 1440, days: [5] }, range, 'Atlantic/Azores'),
    ).toEqual([{ start: range.start, end: Date.UTC(2027, 9, 31, 1) }]);
  });

  it('refuses edges that are no minute of the day', () => {
    const range = { start: 0, end: HOUR };
    for (const wrong of [-1, 1441, 1.5, Number.NaN]) {
      expect(() => dailyBands({ fromMinute: wrong, toMinute: 60 }, range, zone)).toThrow(
        RangeError,
      );
      expect(() => dailyBands({ fromMinute: 60, toMinute: wrong }, range, zone)).toThrow(
        RangeError,
      );
    }
  });

  it('covers just the minutes whose clock reading lies in it, clock changes and all', () => {
    // Edges outside the hour that is skipped or doubled: there a reading says all.
    const edge = fc.oneof(fc.integer({ min: 0, max: 59 }), fc.integer({ min: 121, max: 1439 }));
    const start = fc.oneof(
      fc.integer({ min: at('2027-01-01 00:00') / HOUR, max: at('2028-01-01 00:00') / HOUR }),
      fc.constantFrom(at('2027-03-27 12:00') / HOUR, at('2027-10-30 12:00') / HOUR),
    );
    fc.assert(
      fc.property(
        edge,
        edge,
        fc.option(fc.uniqueArray(fc.integer({ min: 1, max: 7 })), { nil: undefined }),
        start,
        fc.integer({ min: 1, max: 50 }),
        (fromMinute, toMinute, days, hour, hours) => {
          const range: Interval = { start: hour * HOUR, end: (hour + hours) * HOUR };
          const bands = dailyBands({ fromMinute, toMinute, ...(days && { days }) }, range, zone);
          const onDay = (weekday: number): boolean => !days || days.includes(weekday);
          for (let moment = range.start; moment < range.end; moment += 7 * MINUTE) {
            const local = localTimeOf(moment, zone);
            const minute = local.hour * 60 + local.minute;
            const today = weekdayOf(moment, zone);
            const yesterday = ((today + 5) % 7) + 1;
            const inside =
              fromMinute < toMinute
                ? onDay(today) && fromMinute <= minute && minute < toMinute
                : (onDay(today) && fromMinute <= minute) || (onDay(yesterday) && minute < toMinute);
            expect(bands.some((band) => band.start <= moment && moment < band.end)).toBe(inside);
          }
        },
      ),
      { numRuns: cases(300) },
    );
  });
});
