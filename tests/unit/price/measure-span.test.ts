import fc from 'fast-check';
import { inEnglish } from '../../helpers/in-english.js';
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '../../../src/calendar/index.js';
import { lengthThresholds, measureSpan, noticeGiven } from '../../../src/price/index.js';
import { aBook, at, zone } from './builders.js';

const moreThan60 = { moreThanHours: 60, publicHolidays: 'not counted' as const };

describe('more than so many hours', () => {
  it('is not met by exactly so many, and is by a minute more', () => {
    const start = at('2027-05-07 22:00');
    const exact = measureSpan({ start, end: start + 60 * HOUR }, zone, moreThan60);
    expect([exact.exceeded, exact.overByMinutes]).toEqual([false, 0]);
    const more = measureSpan({ start, end: start + 60 * HOUR + MINUTE }, zone, moreThan60);
    expect([more.exceeded, more.overByMinutes]).toEqual([true, 1]);
  });

  it('leaves out the local hours of a public holiday where the rule says so', () => {
    // Sat 22:00 to Tue 12:00 over a Monday holiday: 62 h, of which 24 on the holiday.
    const span = { start: at('2027-08-28 22:00'), end: at('2027-08-31 12:00') };
    const holidays = ['2027-08-30'];
    const out = measureSpan(span, zone, moreThan60, holidays);
    expect([out.elapsedMinutes, out.holidayMinutes, out.countedMinutes]).toEqual([
      3720, 1440, 2280,
    ]);
    expect(out.exceeded).toBe(false);
    expect(inEnglish(out).sentence).toBe(
      '62 h elapsed less 24 h on public holidays: not more than 60 h',
    );
    const counted = { ...moreThan60, publicHolidays: 'counted' as const };
    expect(measureSpan(span, zone, counted, holidays).exceeded).toBe(true);
    expect(measureSpan(span, zone, moreThan60).exceeded).toBe(true);
  });

  it('counts only the part of a holiday that lies in the stretch, and its real length', () => {
    const part = { start: at('2027-08-30 20:00'), end: at('2027-08-31 02:00') };
    expect(measureSpan(part, zone, moreThan60, ['2027-08-30']).holidayMinutes).toBe(240);
    const spring = { start: at('2027-03-27 12:00'), end: at('2027-03-29 12:00') };
    expect(measureSpan(spring, zone, moreThan60, ['2027-03-28']).holidayMinutes).toBe(23 * 60);
  });

  it('says that a clock change decides, but not one on a holiday that is left out', () => {
    const span = { start: at('2027-10-29 22:00'), end: at('2027-11-01 10:00') };
    expect(inEnglish(measureSpan(span, zone, moreThan60))).toMatchObject({
      elapsedMinutes: 61 * 60,
      clocksForwardMinutes: -60,
      exceeded: true,
      clockChangeDecides: true,
      sentence: '61 h elapsed: more than 60 h; clocks go back 1 h in it, which decides',
    });
    const less = { ...moreThan60, moreThanHours: 36 };
    const without = measureSpan(span, zone, less, ['2027-10-31']);
    expect([without.countedMinutes, without.clockChangeDecides]).toEqual([36 * 60, false]);
  });

  it('never counts more without holidays than with them', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300_000 }),
        fc.integer({ min: 0, max: 12_000 }),
        fc.subarray(['2027-03-28', '2027-05-31', '2027-08-30', '2027-10-31']),
        (from, length, holidays) => {
          const start = at('2027-03-20 00:00') + from * MINUTE;
          const m = measureSpan(
            { start, end: start + length * MINUTE },
            zone,
            moreThan60,
            holidays,
          );
          expect(m.elapsedMinutes).toBe(length);
          expect(m.countedMinutes).toBe(length - m.holidayMinutes);
          expect(m.holidayMinutes).toBeGreaterThanOrEqual(0);
          expect(m.exceeded).toBe(m.overByMinutes > 0);
        },
      ),
    );
  });

  it('refuses a stretch that ends before it starts', () => {
    expect(() => measureSpan({ start: 1, end: 0 }, zone, moreThan60)).toThrow(RangeError);
  });

  it('holds a closure against each threshold of the book', () => {
    const { lengths } = aBook({
      lengths: [
        { code: 'a', name: 'A', moreThanHours: 60, publicHolidays: 'not counted' },
        { code: 'b', name: 'B', moreThanHours: 120 },
      ],
    });
    const start = at('2027-05-07 22:00');
    const held = lengthThresholds({ start, end: start + 61 * HOUR }, zone, lengths);
    expect(held.map((item) => [item.threshold.code, item.measure.exceeded])).toEqual([
      ['a', true],
      ['b', false],
    ]);
  });
});

describe('notice given', () => {
  const { notice } = aBook({
    notice: [
      { name: 'short', moreThanHours: 0, factor: '1' },
      { name: 'early', moreThanHours: 1000, factor: '0.5' },
      { name: 'usual', moreThanHours: 100, factor: '0.75' },
    ],
  });
  const start = at('2027-05-07 22:00');
  const band = (hours: number) =>
    noticeGiven({ start: start - hours * HOUR, end: start }, zone, notice).band?.name;

  it('takes the band with the most hours that is met', () => {
    expect([1001, 1000, 101, 100, 1].map(band)).toEqual([
      'early',
      'usual',
      'usual',
      'short',
      'short',
    ]);
  });

  it('takes none where none is met', () => {
    expect(band(0)).toBeUndefined();
  });
});
