import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Train } from '../../../src/model/index.js';
import { priceBookSchema } from '../../../src/model/price-book.js';
import {
  account,
  compareOptions,
  costCurve,
  overrunCost,
  type CostInputs,
} from '../../../src/price/index.js';
import { aResource, at, aWindow } from './builders.js';

const money = fc
  .tuple(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 999 }))
  .map(([whole, part]) => `${whole}.${String(part).padStart(3, '0')}`);
const rate = fc.oneof(
  money,
  fc.record({ amount: money, perMinutes: fc.integer({ min: 1, max: 97 }) }),
);
const small = fc.integer({ min: 0, max: 120 });
const factor = fc.constantFrom('0.5', '1', '1.25', '1.5', '2.333');

const delay = fc.oneof(
  fc
    .record({
      rate,
      headwayMinutes: fc.integer({ min: 0, max: 15 }),
      cancel: fc.option(small),
      more: small,
    })
    .map(({ rate, headwayMinutes, cancel, more }) => ({
      by: 'train',
      rate,
      headwayMinutes,
      ...(cancel === null ? {} : { cancelAfterMinutes: cancel, deemedMinutes: cancel + more }),
    })),
  fc
    .uniqueArray(fc.record({ afterMinutes: small, rate }), {
      minLength: 1,
      maxLength: 4,
      selector: (b) => b.afterMinutes,
    })
    .map((bands) => ({
      by: 'bands',
      bands: bands.sort((a, b) => a.afterMinutes - b.afterMinutes),
    })),
);

const book = fc
  .record({
    rounding: fc.constantFrom('half-up', 'half-even'),
    decimals: fc.constantFrom(0, 2, 3),
    basis: fc.constantFrom('actual-loss', 'damages'),
    delay,
    standing: fc.record({
      labour: fc.constantFrom([], ['gang']),
      combine: fc.constantFrom('highest', 'multiply'),
      leastHours: fc.constantFrom('overrun', 'call-out'),
      blockMinutes: fc.constantFrom(1, 15, 60),
      factors: fc.array(
        fc.record({
          name: fc.constant('band'),
          factor,
          on: fc.constantFrom('labour', 'plant', 'all'),
          from: fc.constantFrom('22:00', '05:30', '01:00'),
          to: fc.constantFrom('06:00', '24:00', '01:30'),
          holidaysOnly: fc.boolean(),
        }),
        { maxLength: 3 },
      ),
    }),
    fixed: fc
      .array(fc.record({ afterMinutes: small, amount: money }), { maxLength: 3 })
      .map((all) => all.map((item, i) => ({ ...item, code: `f${i}`, name: `charge ${i}` }))),
    restriction: fc.record({
      afterMinutes: small,
      minutesLostPerTrain: fc.constantFrom('0', '2.5', '3'),
      liftedAfterMinutes: fc.integer({ min: 0, max: 300 }),
      rate,
    }),
    damages: fc.record({
      rate,
      afterMinutes: small,
      blockMinutes: fc.constantFrom(1, 30),
      cap: money,
    }),
    lengths: fc.constantFrom(
      [],
      [
        {
          code: 'long',
          name: 'long',
          moreThanHours: 7,
          publicHolidays: 'not counted',
          amount: '100',
        },
      ],
    ),
  })
  .map((item) =>
    priceBookSchema.parse({ schema: 1, name: 'any', currency: 'GBP', source: 'drawn', ...item }),
  );

// The last of these nights is the one on which clocks go back, so some overruns run through the doubled hour.
const window = fc
  .constantFrom(
    ['2027-05-12 23:00', '2027-05-13 05:00'],
    ['2027-10-30 22:00', '2027-10-31 00:45'],
    ['2027-03-27 22:00', '2027-03-28 00:45'],
  )
  .map(([start, end]) => aWindow({ start: at(start), end: at(end) }));

const inputs: fc.Arbitrary<CostInputs> = fc
  .record({
    window,
    prices: book,
    due: fc.array(
      fc.record({
        after: fc.integer({ min: -10, max: 200 }),
        weight: fc.constantFrom(0, 0.1, 1, 2.5),
      }),
      {
        maxLength: 12,
      },
    ),
    gangRate: fc.constantFrom(0, 33.33, 75.5),
    leastHours: fc.constantFrom(0, 1, 4, 9),
    holidays: fc.constantFrom([], ['2027-05-13', '2027-10-31']),
  })
  .map(({ due, gangRate, leastHours, ...rest }) => ({
    ...rest,
    trains: due.map((item, i): Train => ({
      id: `T${i}`,
      passesAt: rest.window.end + item.after * MINUTE,
      weight: item.weight,
    })),
    resources: [aResource('gang', gangRate, { leastHours }), aResource('crane', 240)],
  }));

const pence = (text: string, decimals: number): bigint => {
  const [whole, part = ''] = text.split('.');
  return BigInt(whole! + part.padEnd(decimals, '0'));
};

describe('what holds of every price book', () => {
  it('never costs less as the overrun grows, head by head and in all', () => {
    fc.assert(
      fc.property(inputs, (given) => {
        const curve = costCurve(given, 150);
        expect(curve.falls).toEqual([]);
        for (const { minor } of [curve, ...curve.heads])
          expect(minor.findIndex((cost, m) => m > 0 && cost < minor[m - 1]!)).toBe(-1);
      }),
      { numRuns: 80 },
    );
  });

  it('has counted rows that add up to the total, and the rest to what is not counted', () => {
    fc.assert(
      fc.property(inputs, small, (given, overrunMinutes) => {
        const r = overrunCost({ ...given, overrunMinutes });
        const { decimals } = given.prices;
        const sum = (counted: boolean): bigint =>
          r.rows
            .filter((row) => row.counted === counted)
            .reduce((total, row) => total + pence(row.amount, decimals), 0n);
        expect(sum(true)).toBe(pence(r.total, decimals));
        expect(sum(false)).toBe(pence(r.notCounted, decimals));
      }),
    );
  });

  it('gives on the curve what it gives for the one minute', () => {
    fc.assert(
      fc.property(inputs, fc.integer({ min: 0, max: 150 }), (given, overrunMinutes) => {
        const r = overrunCost({ ...given, overrunMinutes });
        const curve = costCurve(given, 150);
        expect(curve.amounts[overrunMinutes]).toBe(r.total);
        expect(curve.heads.map((h) => h.code)).toEqual(r.rows.map((row) => row.code));
      }),
      { numRuns: 40 },
    );
  });

  it('names a step wherever a charge makes the cost jump', () => {
    fc.assert(
      fc.property(inputs, (given) => {
        const curve = costCurve(given, 150);
        for (const head of curve.heads.filter((h) => h.head === 'fixed')) {
          const named = curve.steps.filter((s) => s.code === head.code).map((s) => s.atMinute);
          const jumps = head.minor.flatMap((sum, m) =>
            m > 0 && sum !== head.minor[m - 1] ? [m] : [],
          );
          for (const jump of jumps) expect(named).toContain(jump);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('costs options of the same inputs the same', () => {
    fc.assert(
      fc.property(
        inputs,
        fc.array(fc.integer({ min: -30, max: 150 }), { minLength: 1, maxLength: 40 }),
        money,
        (given, overrunByRun, amount) => {
          const option = (name: string) => ({
            name,
            overrunByRun,
            curve: costCurve(given, 150),
            fixed: [{ what: 'booking', amount, source: 'drawn' }],
          });
          const { options, tied } = compareOptions([option('one'), option('other')]);
          expect(options[1]).toMatchObject({
            verdict: 'the same',
            expectedTotal: options[0]!.expectedTotal,
            cheaperInShare: 0,
          });
          expect(Number(options[1]!.difference)).toBe(0);
          expect(Number(options[1]!.differenceError)).toBe(0);
          expect(tied).toEqual(['other']);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('keeps an account whose claimants, heads and evidence each add up to the total', () => {
    fc.assert(
      fc.property(inputs, small, fc.array(small, { maxLength: 6 }), (given, overrun, lates) => {
        const a = account({
          ...given,
          actualHandback: given.window.end + overrun * MINUTE,
          trainActuals: given.trains.slice(0, lates.length).map((train, i) => ({
            train: train.id,
            passedAt: train.passesAt + lates[i]! * MINUTE,
            claimedBy: i % 2 === 0 ? 'north operator' : 'south operator',
            ...(i % 3 === 0 ? { evidence: `log ${i}` } : {}),
          })),
        });
        const { decimals } = given.prices;
        const sum = (some: readonly string[]): bigint =>
          some.reduce((total, text) => total + pence(text, decimals), 0n);
        const total = pence(a.total, decimals);
        expect(sum(a.claimants.map((c) => c.amount))).toBe(total);
        expect(sum(a.heads.map((h) => h.amount))).toBe(total);
        expect(sum([a.evidenced, a.notEvidenced])).toBe(total);
        expect(sum(a.rows.filter((r) => r.counted).map((r) => r.amount))).toBe(total);
      }),
    );
  });
});
