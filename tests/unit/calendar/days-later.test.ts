import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { daysLater, DAY, isoText } from '../../../src/calendar/index.js';
import { at, zone } from '../../helpers/clock.js';

const shown = (from: string, days: number): string =>
  isoText(daysLater(at(from), days, zone), zone).slice(0, 22);

describe('the same clock some days later', () => {
  it.each([
    ['a night of no change', '2027-05-04 23:30', 7, '2027-05-11T23:30:00+01'],
    [
      'late in the evening, clocks going forward between',
      '2027-03-27 23:30',
      7,
      '2027-04-03T23:30:00+01',
    ],
    [
      'soon after midnight, clocks going back between',
      '2027-10-24 00:30',
      14,
      '2027-11-07T00:30:00+00',
    ],
    ['a time that clocks skip that night', '2027-03-21 01:30', 7, '2027-03-28T02:00:00+01'],
    ['a time that clocks show twice that night', '2027-10-24 01:30', 7, '2027-10-31T01:30:00+01'],
    ['days before', '2027-04-03 23:30', -7, '2027-03-27T23:30:00+00'],
  ])('%s', (_, from, days, text) => {
    expect(shown(from, days)).toBe(text);
  });

  it('is what Temporal says of a day later in every hour of a year', () => {
    for (let k = 0; k < 366 * 24; k += 1) {
      const from = at('2027-01-01 00:30') + (k * DAY) / 24;
      const own = Temporal.Instant.fromEpochMilliseconds(from).toZonedDateTimeISO(zone);
      const wall = own.toPlainDateTime().add({ days: 7 });
      const there = wall.toZonedDateTime(zone, { disambiguation: 'earlier' });
      // Where the clocks skip it, Temporal keeps the minutes on one side of the gap.
      if (there.toPlainDateTime().equals(wall))
        expect(daysLater(from, 7, zone)).toBe(there.epochMilliseconds);
    }
  });
});
