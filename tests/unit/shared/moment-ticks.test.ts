import { describe, expect, it } from 'vitest';
import { clockText } from '../../../components/shared/format.js';
import { momentTicks, momentTickText } from '../../../components/shared/moment-ticks.js';
import { at } from '../../helpers/clock.js';

const zone = 'Europe/London';
const texts = (from: string, to: string, most: number): string[] =>
  momentTicks(at(from), at(to), most, zone).map((tick) => momentTickText(tick, zone));

describe('round moments', () => {
  it('are hours of the clock in a night', () => {
    expect(texts('2027-02-09 23:30', '2027-02-10 05:30', 8)).toEqual([
      'Wed 10 Feb',
      '01:00',
      '02:00',
      '03:00',
      '04:00',
      '05:00',
    ]);
  });

  it('are midnights over weeks', () => {
    expect(texts('2027-05-01 22:00', '2027-05-15 04:00', 7)).toEqual([
      'Sun 2 May',
      'Tue 4 May',
      'Thu 6 May',
      'Sat 8 May',
      'Mon 10 May',
      'Wed 12 May',
      'Fri 14 May',
    ]);
  });

  it('are round hours on both sides of a change of clocks', () => {
    // Clocks go from 01:00 to 02:00 on 28 March 2027: the hours of 2 on the clock are 00, 02, 04.
    const spring = momentTicks(at('2027-03-27 22:00'), at('2027-03-28 08:00'), 6, zone);
    expect(spring.map((value) => clockText(value, zone))).toEqual([
      '22:00',
      '00:00',
      '02:00',
      '04:00',
      '06:00',
      '08:00',
    ]);
    const autumn = momentTicks(at('2027-10-30 22:00'), at('2027-10-31 06:00'), 6, zone);
    for (const value of autumn) expect(clockText(value, zone)).toMatch(/^\d[02468]:00$/);
  });

  it('are midnights of the place over a change of clocks', () => {
    const days = momentTicks(at('2027-03-26 12:00'), at('2027-03-31 12:00'), 5, zone);
    expect(days.map((day) => clockText(day, zone))).toEqual(Array(days.length).fill('00:00'));
  });
});
