import { describe, expect, it } from 'vitest';
import { priceBookSchema } from '../../src/model/price-book.js';
import { overrunCost } from '../../src/price/index.js';
import { aWindow } from '../unit/price/builders.js';

/** What a user's price book with these late opening charges asks for a line opened so many minutes late. */
function charge(lateOpening: unknown, minutes: number): string {
  const prices = priceBookSchema.parse({
    schema: 1,
    name: 'A public contract',
    currency: 'USD',
    source: 'Published instruction to section 12-4.03, A07-19-13',
    lateOpening: [lateOpening],
  });
  const asked = { window: aWindow(), trains: [], resources: [], prices };
  return overrunCost({ ...asked, overrunMinutes: minutes }).total;
}

// California Department of Transportation, instruction to section 12-4.03 (A07-19-13), read whole: each 10 minutes or part;
// the first half hour 50 % (not under $1,000, not over $3,000), the second 75 % (not under $1,000), from the second hour
// 100 %; cap 5 % of the bid. Published as figures: $18,000 an hour gives 1,500, 2,250 and 3,000 for each 10 minutes. The
// sums at each minute are worked out from those by hand.
const lateOpening = (perHour: string, cap?: string) => ({
  code: 'late-opening',
  name: 'Late opening of the road',
  rate: { amount: perHour, perMinutes: 60 },
  intervalMinutes: 10,
  bands: [
    { afterMinutes: 0, percent: '50', least: '1000', most: '3000' },
    { afterMinutes: 30, percent: '75', least: '1000' },
    { afterMinutes: 60, percent: '100' },
  ],
  ...(cap !== undefined && { cap }),
});

describe('the late opening charge of a public contract', () => {
  const minutes = [0, 1, 10, 12, 30, 31, 60, 61, 90, 95, 120, 374];
  it.each([
    ['18000', [0, 1500, 1500, 3000, 4500, 6750, 11250, 14250, 20250, 23250, 29250, 107250]],
    // 10 minutes at 50 and 75 % are less than the least.
    ['6000', [0, 1000, 1000, 2000, 3000, 4000, 6000, 7000, 9000, 10000, 12000, 38000]],
    // 10 minutes at 50 % are more than the most.
    ['48000', [0, 3000, 3000, 6000, 9000, 15000, 27000, 35000, 51000, 59000, 75000, 283000]],
  ])('comes to the published figures at %s an hour', (perHour, sums) => {
    expect(minutes.map((m) => charge(lateOpening(perHour), m))).toEqual(
      sums.map((sum) => sum.toFixed(2)),
    );
  });

  it('stops at its cap: 5 % of a bid of 400,000', () => {
    expect(charge(lateOpening('18000', '20000'), 61)).toBe('14250.00');
    expect(charge(lateOpening('18000', '20000'), 95)).toBe('20000.00');
  });
});

// Virginia, as excerpted by workzonesafety.org: 15-minute units for two hours, hourly after. No rate is published with it: the 4,000 an
// hour is constructed, so 1,000 for each quarter begun and 4,000 for each hour begun from the third on.
describe('a second schedule: quarters for two hours, hours after', () => {
  const schedule = {
    code: 'lane',
    name: 'Late opening of a lane',
    rate: { amount: '4000', perMinutes: 60 },
    intervalMinutes: 15,
    bands: [{ afterMinutes: 0 }, { afterMinutes: 120, intervalMinutes: 60 }],
  };
  it.each([
    [0, '0.00'],
    [1, '1000.00'],
    [15, '1000.00'],
    [16, '2000.00'],
    [120, '8000.00'],
    [121, '12000.00'],
    [180, '12000.00'],
    [181, '16000.00'],
  ])('at %i minutes', (minutes, sum) => {
    expect(charge(schedule, minutes)).toBe(sum);
  });

  // Arizona, same source: a constant for each 15 minutes, the hourly value over four. The 7,000 an hour is constructed: no rate is published.
  it('of one kind of interval only is that of the hour over four', () => {
    const constant = {
      code: 'road',
      name: 'Late opening',
      rate: { amount: '7000', perMinutes: 60 },
      intervalMinutes: 15,
    };
    expect([1, 15, 46, 60].map((m) => charge(constant, m))).toEqual([
      '1750.00',
      '1750.00',
      '7000.00',
      '7000.00',
    ]);
  });

  it('is refused where a band does not hold whole intervals, or its least is above its most', () => {
    for (const bands of [
      [{ afterMinutes: 0 }, { afterMinutes: 20 }],
      [{ afterMinutes: 0, least: '5', most: '4' }],
    ])
      expect(() => charge({ ...schedule, bands }, 1)).toThrow();
  });
});
