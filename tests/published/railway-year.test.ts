import { describe, expect, it } from 'vitest';
import {
  dayAt,
  dayText,
  periodsTouched,
  periodText,
  railwayPeriods,
} from '../../src/calendar/index.js';

const zone = 'Europe/London';

// A data package's table of railway periods 1995 to 2036, citing the regulator (read; lengths worked out from its edges).
describe('the four-week periods of the railway year', () => {
  it.each([
    [2024, 27, 30],
    [2025, 26, 31],
    [2026, 32, 25],
    [2027, 31, 27],
  ])('that begins in %i: period 1 has %i days and period 13 has %i', (year, first, last) => {
    const days = railwayPeriods(year, zone).map((period) => period.days);
    expect(days).toEqual([first, ...Array.from({ length: 11 }, () => 28), last]);
  });

  it('2026/27 start and end on the days of the table', () => {
    expect(
      railwayPeriods(2026, zone).map(
        (period) => `${dayText(dayAt(period.start, zone))} ${dayText(dayAt(period.end - 1, zone))}`,
      ),
    ).toEqual([
      '2026-04-01 2026-05-02',
      '2026-05-03 2026-05-30',
      '2026-05-31 2026-06-27',
      '2026-06-28 2026-07-25',
      '2026-07-26 2026-08-22',
      '2026-08-23 2026-09-19',
      '2026-09-20 2026-10-17',
      '2026-10-18 2026-11-14',
      '2026-11-15 2026-12-12',
      '2026-12-13 2027-01-09',
      '2027-01-10 2027-02-06',
      '2027-02-07 2027-03-06',
      '2027-03-07 2027-03-31',
    ]);
  });

  // Worked out from the same table: 14 November 2026 is a Saturday and the last day of period 8.
  it('leave the night of Saturday 14 November 2026 in two of them', () => {
    const night = { start: Date.UTC(2026, 10, 14, 23), end: Date.UTC(2026, 10, 15, 7) };
    expect(periodsTouched(night, zone).map(periodText)).toEqual(['P8 2026/27', 'P9 2026/27']);
  });
});
