import { Big } from 'big.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalText, minorOf, parseMoney } from '../../../src/price/money.js';
import { overrunCost } from '../../../src/price/index.js';
import { aBook, aResource, aWindow, trainsDue } from './builders.js';

/** Rounds over/under to a whole number, both whole and not negative, by nothing but integer division. */
function roundedDivision(over: bigint, under: bigint, halfEven: boolean): bigint {
  const whole = over / under;
  const twice = 2n * (over % under);
  if (twice > under) return whole + 1n;
  if (twice < under) return whole;
  return halfEven && whole % 2n === 0n ? whole : whole + 1n;
}

const rounding = fc.constantFrom('half-up' as const, 'half-even' as const);
const thousandths = fc.bigInt({ min: 0n, max: 10_000_000n });
const inThousandths = (n: bigint): string => `${n / 1000n}.${String(n % 1000n).padStart(3, '0')}`;

describe('money against a reference in whole numbers', () => {
  it('rounds every quotient once and to the penny', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 13n }),
        fc.integer({ min: 1, max: 14_000_000 }),
        rounding,
        (n, under, rule) => {
          const coin = { currency: 'GBP', decimals: 2, rounding: rule };
          // n thousandths over `under`, in pence: n / (10 under).
          const expected = roundedDivision(n, 10n * BigInt(under), rule === 'half-even');
          expect(BigInt(minorOf(new Big(inThousandths(n)), coin, under))).toBe(expected);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('rounds exact halves as the book says', () => {
    const up = { currency: 'GBP', decimals: 2, rounding: 'half-up' as const };
    const even = { ...up, rounding: 'half-even' as const };
    for (const [text, halfUp, halfEven] of [
      ['0.005', 1, 0],
      ['0.015', 2, 2],
      ['0.025', 3, 2],
      ['2.675', 268, 268],
      ['1.005', 101, 100],
    ] as const) {
      expect([text, minorOf(new Big(text), up), minorOf(new Big(text), even)]).toEqual([
        text,
        halfUp,
        halfEven,
      ]);
    }
  });

  it('prices a train and a crane as the reference does', () => {
    fc.assert(
      fc.property(
        thousandths,
        fc.array(fc.integer({ min: 0, max: 200 }), { minLength: 1, maxLength: 10 }),
        fc.integer({ min: 0, max: 10_000_00 }),
        fc.integer({ min: 0, max: 240 }),
        rounding,
        (perMinute, due, hourlyPence, overrun, rule) => {
          const r = overrunCost({
            window: aWindow(),
            overrunMinutes: overrun,
            prices: aBook({
              rounding: rule,
              delay: { by: 'train', rate: inThousandths(perMinute) },
            }),
            trains: trainsDue(due),
            resources: [aResource('crane', hourlyPence / 100)],
          });
          // Without a headway each train is simply held until handback.
          const minutes = due.reduce((sum, m) => sum + Math.max(0, overrun - m), 0);
          const even = rule === 'half-even';
          const delay = roundedDivision(perMinute * BigInt(minutes), 10n, even);
          const crane = roundedDivision(BigInt(hourlyPence) * BigInt(overrun), 60n, even);
          const text = (pence: bigint): string =>
            `${pence / 100n}.${String(pence % 100n).padStart(2, '0')}`;
          expect(r.rows.map((row) => row.amount)).toEqual([text(delay), text(crane)]);
          expect(r.total).toBe(text(delay + crane));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('writes sums with the places of the coin, below nothing too', () => {
    expect(decimalText(813015, { decimals: 2 })).toBe('8130.15');
    expect(decimalText(-5, { decimals: 2 })).toBe('-0.05');
    expect(decimalText(7n, { decimals: 0 })).toBe('7');
  });

  it('refuses what is no sum of money', () => {
    const coin = { currency: 'GBP', decimals: 2, rounding: 'half-up' as const };
    expect(parseMoney('12.345', coin)).toBe(1235);
    for (const text of ['', '1e3', '1,000.00', 'ten', '1.'])
      expect(() => parseMoney(text, coin)).toThrow(RangeError);
  });
});
