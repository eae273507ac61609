// Easter by its church rule, which the algorithm in src does not use: the first Sunday after the paschal full moon, whose
// day the year's golden number gives.
import { describe, expect, it } from 'vitest';
import {
  bankHolidaysEnglandAndWales,
  dateOf,
  dayFromText,
  dayNumber,
  easterDay,
  weekdayOfDay,
} from '../../../src/calendar/index.js';

/**
 * The paschal full moon by golden number 1 to 19, as month and day.
 * @see Book of Common Prayer, tables to find Easter Day from 1700 to 1899 and from 1900 to 2199; from memory.
 */
const moons1900 =
  '4-14 4-3 3-23 4-11 3-31 4-18 4-8 3-28 4-16 4-5 3-25 4-13 4-2 3-22 4-10 3-30 4-17 4-7 3-27';
const moons1700 =
  '4-13 4-2 3-22 4-10 3-30 4-18 4-7 3-27 4-15 4-4 3-24 4-12 4-1 3-21 4-9 3-29 4-17 4-6 3-26';

function easterByTable(year: number): number {
  const moons = (year < 1900 ? moons1700 : moons1900).split(' ');
  const [month, day] = moons[year % 19]!.split('-').map(Number);
  const moon = dayNumber(year, month!, day!);
  return moon + 7 - (weekdayOfDay(moon) % 7);
}

describe('Easter Day', () => {
  it('is the first Sunday after the paschal full moon, in each year from 1700 to 2199', () => {
    for (let year = 1700; year < 2200; year += 1)
      expect(dayFromText(easterDay(year)), `${year}`).toBe(easterByTable(year));
  });

  it.each([
    // The earliest and the latest that there can be; common knowledge, from memory.
    [1818, '1818-03-22'],
    [1943, '1943-04-25'],
    [2038, '2038-04-25'],
  ])('of %d is %s', (year, date) => {
    expect(easterDay(year)).toBe(date);
  });
});

describe('a bank holiday on a Monday of May or August', () => {
  it('is the first or the last of its month, in every year', () => {
    for (let year = 2000; year < 2030; year += 1) {
      const dates = bankHolidaysEnglandAndWales(year).map((holiday) => holiday.date);
      const mondays = [5, 8].map((month) =>
        Array.from({ length: 31 }, (_, at) => dayNumber(year, month, at + 1)).filter(
          (day) => weekdayOfDay(day) === 1,
        ),
      );
      const wanted = [mondays[0]!.at(0)!, mondays[0]!.at(-1)!, mondays[1]!.at(-1)!];
      for (const day of wanted) {
        const { month, day: date } = dateOf(day);
        expect(dates).toContain(`${year}-0${month}-${String(date).padStart(2, '0')}`);
      }
    }
  });
});
