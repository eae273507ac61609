import { describe, expect, it } from 'vitest';
import { addMinutes, instantOf, lengthMinutes, type Interval } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { priceBookSchema } from '../../src/model/price-book.js';
import { measureSpan, overrunCost } from '../../src/price/index.js';

const zone = 'Europe/London';
const clock = (year: number, month: number, day: number, hour: number) =>
  instantOf({ year, month, day, hour, minute: 0 }, zone, 'earlier');

// Thresholds: model track access contract, schedule 4 part 3, known from reading and memory together (M+). That a
// clock change can decide between them is worked out from the dates, not published.
describe('closures of more than 60 and more than 120 hours', () => {
  const type2 = { moreThanHours: 60, publicHolidays: 'not counted' as const };
  const type3 = { moreThanHours: 120, publicHolidays: 'counted' as const };
  const weekend = (year: number, month: number, friday: number): Interval => ({
    start: clock(year, month, friday, 22),
    end: clock(year, month, friday + 3, 10),
  });

  it.each([
    ['an ordinary weekend', weekend(2026, 5, 8), 60, false, false],
    ['the weekend clocks go forward', weekend(2026, 3, 27), 59, false, false],
    ['the weekend clocks go back', weekend(2026, 10, 23), 61, true, true],
  ])('count %s, Fri 22:00 to Mon 10:00, in real hours', (_, span, hours, exceeded, decided) => {
    expect(lengthMinutes(span)).toBe(hours * 60);
    const measure = measureSpan(span, zone, type2);
    expect(measure.countedMinutes).toBe(hours * 60);
    expect(measure.exceeded).toBe(exceeded);
    expect(measure.clockChangeDecides).toBe(decided);
  });

  it('leave public-holiday hours out of the first and in the second', () => {
    // Thursday 2 April 2026 22:00 to Tuesday 7 April 23:00: 121 h over Good Friday and Easter Monday.
    const span = { start: clock(2026, 4, 2, 22), end: clock(2026, 4, 7, 23) };
    const holidays = ['2026-04-03', '2026-04-06'];
    expect(measureSpan(span, zone, type3, holidays)).toMatchObject({
      countedMinutes: 121 * 60,
      exceeded: true,
    });
    expect(measureSpan(span, zone, type2, holidays)).toMatchObject({
      countedMinutes: (121 - 48) * 60,
      exceeded: true,
    });
  });
});

// Constructed: six delays of our own at rates read elsewhere. Indicative only; the contract governs.
describe('a constructed morning of six late trains', () => {
  const end = clock(2026, 5, 10, 6);
  const window: AccessWindow = {
    id: 'W',
    title: '',
    start: clock(2026, 5, 9, 23),
    end,
    zone,
    lines: [],
    isolation: [],
    status: 'confirmed',
    trainsAfter: '',
  };
  const late = [95, 80, 60, 45, 25, 10];
  const trains = late.map((minutes, i) => ({
    id: `T${i}`,
    passesAt: addMinutes(end, 95 - minutes),
    weight: 1,
  }));
  const priced = (rate: unknown) =>
    overrunCost({
      window,
      overrunMinutes: 95,
      trains,
      resources: [],
      prices: priceBookSchema.parse({
        schema: 1,
        name: 'constructed',
        currency: 'GBP',
        source: 'constructed',
        delay: { by: 'train', rate },
      }),
    });

  it('has the delays 95, 80, 60, 45, 25 and 10, in all 315 minutes', () => {
    const { trains: held } = priced('1');
    expect(held.map((train) => train.minutesLate)).toEqual(late);
    expect(priced('1').total).toBe('315.00');
  });

  // Freight rate: a third party's page on schedule 8, read second-hand, not checked against the determination.
  it('costs GBP 8,130.15 at GBP 25.81 a minute', () => {
    expect(priced('25.81').total).toBe('8130.15');
  });

  // National Audit Office, press page of its report: 14 million delay minutes in 2006-07, at least GBP 1 billion.
  // The rate of about GBP 71.43 is worked out from the two.
  it('costs exactly GBP 22,500 at a thousand million pounds for fourteen million minutes', () => {
    expect(priced({ amount: '1000000000', perMinutes: 14_000_000 }).total).toBe('22500.00');
  });

  it('costs 45 pence more at that rate rounded to the penny', () => {
    expect(priced('71.43').total).toBe('22500.45');
  });
});
