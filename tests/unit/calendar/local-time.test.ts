import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  clockChanges,
  dateOf,
  dayNumber,
  HOUR,
  instantOf,
  isLocalTime,
  isoText,
  isZone,
  localTimeOf,
  MINUTE,
  momentOn,
  offsetMinutes,
  readings,
  startOfLocalDay,
  weekdayOf,
  zoneName,
  type LocalTime,
} from '../../../src/calendar/index.js';
import { cases } from '../../helpers/cases.js';

const zones = [
  'Europe/London',
  'Europe/Berlin',
  'America/New_York',
  'Australia/Sydney',
  'Pacific/Auckland',
  // Half an hour of summer time.
  'Australia/Lord_Howe',
];
const from = Date.UTC(2024, 0, 1);
const to = Date.UTC(2031, 0, 1);

const zoned = (at: number, zone: string): Temporal.ZonedDateTime =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);

function transitions(zone: string): number[] {
  const found: number[] = [];
  let at = zoned(from, zone).getTimeZoneTransition('next');
  while (at && at.epochMilliseconds < to) {
    found.push(at.epochMilliseconds);
    at = at.getTimeZoneTransition('next');
  }
  return found;
}

const plain = (t: LocalTime): Temporal.PlainDateTime =>
  new Temporal.PlainDateTime(t.year, t.month, t.day, t.hour, t.minute);
const moment = (t: LocalTime, zone: string, disambiguation: 'earlier' | 'later'): number =>
  plain(t).toZonedDateTime(zone, { disambiguation }).epochMilliseconds;

const anyMinute = fc.integer({ min: from / MINUTE, max: to / MINUTE }).map((n) => n * MINUTE);
const anyZone = fc.constantFrom(...zones, 'UTC', 'Asia/Kathmandu', 'America/St_Johns');

describe('clock changes from 2024 to 2030', () => {
  it.each(zones)('are where a second time library has them in %s', (zone) => {
    const expected = transitions(zone);
    expect(expected).toHaveLength(14);
    expect(clockChanges(from, to, zone)).toEqual(
      expected.map((at) => ({
        at,
        forwardMinutes:
          (zoned(at, zone).offsetNanoseconds - zoned(at - 1, zone).offsetNanoseconds) / 6e10,
      })),
    );
  });

  it.each(zones)(
    'leave every local time around them with the readings of a second library in %s',
    (zone) => {
      let doubled = 0;
      let skipped = 0;
      for (const change of transitions(zone)) {
        // Wall times three hours either side, read as if the offset did not change, so that skipped ones come up too.
        const base = change + offsetMinutes(change - 1, zone) * MINUTE;
        for (let minutes = -180; minutes <= 180; minutes += 10) {
          for (const step of [0, 1, 9]) {
            const local = localTimeOf(base + (minutes + step) * MINUTE, 'UTC');
            const reading = readings(local, zone);
            const earlier = moment(local, zone, 'earlier');
            const later = moment(local, zone, 'later');
            if (earlier === later) {
              expect(reading).toEqual({ kind: 'one', at: earlier });
            } else if (zoned(earlier, zone).toPlainDateTime().equals(plain(local))) {
              doubled += 1;
              expect(reading).toEqual({ kind: 'two', earlier, later });
              expect(instantOf(local, zone, 'earlier')).toBe(earlier);
              expect(instantOf(local, zone, 'later')).toBe(later);
            } else {
              skipped += 1;
              expect(reading).toEqual({ kind: 'none', gap: change });
              expect(() => instantOf(local, zone, 'earlier')).toThrow(RangeError);
              expect(() => instantOf(local, zone, 'later')).toThrow(RangeError);
            }
            if (earlier !== later) {
              expect(() => instantOf(local, zone, 'reject')).toThrow(RangeError);
              expect(() =>
                plain(local).toZonedDateTime(zone, { disambiguation: 'reject' }),
              ).toThrow();
            } else expect(instantOf(local, zone, 'reject')).toBe(earlier);
          }
        }
      }
      expect(doubled).toBeGreaterThan(50);
      expect(skipped).toBeGreaterThan(50);
    },
  );
});

describe('a local time', () => {
  it('comes back from the moment it names, in every zone', () => {
    fc.assert(
      fc.property(anyMinute, anyZone, (at, zone) => {
        const reading = readings(localTimeOf(at, zone), zone);
        expect(reading.kind).not.toBe('none');
        if (reading.kind === 'one') expect(reading.at).toBe(at);
        if (reading.kind === 'two') expect([reading.earlier, reading.later]).toContain(at);
      }),
      { numRuns: cases(2000) },
    );
  });

  it('is what a second library shows, with its weekday and offset', () => {
    fc.assert(
      fc.property(anyMinute, anyZone, (at, zone) => {
        const other = zoned(at, zone);
        expect(localTimeOf(at, zone)).toEqual({
          year: other.year,
          month: other.month,
          day: other.day,
          hour: other.hour,
          minute: other.minute,
        });
        expect(weekdayOf(at, zone)).toBe(other.dayOfWeek);
        expect(isoText(at, zone)).toBe(other.toString({ timeZoneName: 'never' }));
      }),
      { numRuns: cases(1000) },
    );
  });

  it('that is no time of the calendar is refused', () => {
    const wrong = { year: 2027, month: 2, day: 29, hour: 0, minute: 0 };
    expect(isLocalTime(wrong)).toBe(false);
    expect(isLocalTime({ ...wrong, year: 2028 })).toBe(true);
    expect(isLocalTime({ year: 2027, month: 1, day: 1, hour: 24, minute: 0 })).toBe(false);
    expect(() => readings(wrong, 'UTC')).toThrow(RangeError);
  });

  it('is refused in a zone that is not known', () => {
    expect(isZone('Europe/Nowhere')).toBe(false);
    expect(isZone('')).toBe(false);
    expect(isZone('Europe/London')).toBe(true);
    expect(() => offsetMinutes(0, 'Europe/Nowhere')).toThrow(RangeError);
  });
});

describe('a local day', () => {
  it('starts where a second library starts it, however many days on or back', () => {
    fc.assert(
      fc.property(anyMinute, anyZone, fc.integer({ min: -400, max: 400 }), (at, zone, days) => {
        expect(startOfLocalDay(at, zone, days)).toBe(
          zoned(at, zone).add({ days }).startOfDay().epochMilliseconds,
        );
      }),
      { numRuns: cases(500) },
    );
  });

  it('has each minute where a second library has it; a skipped one at the change', () => {
    const days = fc.oneof(
      fc.integer({ min: dayNumber(2024, 1, 1), max: dayNumber(2030, 12, 31) }),
      // Around the changes of London and Lord Howe in 2027.
      fc.integer({ min: dayNumber(2027, 3, 24), max: dayNumber(2027, 4, 8) }),
      fc.integer({ min: dayNumber(2027, 9, 30), max: dayNumber(2027, 11, 4) }),
    );
    const minuteOfTwoDays = fc.oneof(
      fc.integer({ min: 0, max: 2880 }),
      // The hours in which clocks change.
      fc.integer({ min: 60, max: 180 }),
    );
    fc.assert(
      fc.property(days, minuteOfTwoDays, anyZone, (day, minutes, zone) => {
        const { year, month, day: date } = dateOf(day);
        const wall = localTimeOf(Date.UTC(year, month - 1, date, 0, minutes), 'UTC');
        const earlier = moment(wall, zone, 'earlier');
        const later = moment(wall, zone, 'later');
        const ours = [momentOn(day, minutes, zone), momentOn(day, minutes, zone, 'later')];
        if (earlier === later || zoned(earlier, zone).toPlainDateTime().equals(plain(wall)))
          expect(ours).toEqual([earlier, later]);
        else {
          const change = zoned(earlier - 24 * HOUR, zone).getTimeZoneTransition('next');
          expect(ours).toEqual([change?.epochMilliseconds, change?.epochMilliseconds]);
        }
      }),
      { numRuns: cases(3000) },
    );
  });

  it('starts at the first minute that exists where clocks skip midnight', () => {
    // tz database: Cairo goes forward at 00:00 on 28 April 2023.
    const start = startOfLocalDay(Date.UTC(2023, 3, 28, 12), 'Africa/Cairo');
    expect(isoText(start, 'Africa/Cairo')).toBe('2023-04-28T01:00:00+03:00');
    expect(start - startOfLocalDay(start, 'Africa/Cairo', -1)).toBe(24 * HOUR);
    expect(startOfLocalDay(start, 'Africa/Cairo', 1) - start).toBe(23 * HOUR);
  });
});

describe('a zone’s name', () => {
  it('says which of the two readings of a doubled hour is meant', () => {
    const reading = readings(
      { year: 2027, month: 10, day: 31, hour: 1, minute: 30 },
      'Europe/London',
    );
    expect(reading.kind).toBe('two');
    if (reading.kind !== 'two') return;
    expect(zoneName(reading.earlier, 'Europe/London')).toBe('BST');
    expect(zoneName(reading.later, 'Europe/London')).toBe('GMT');
  });
});
