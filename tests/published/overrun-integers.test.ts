import { describe, expect, it } from 'vitest';
import { priceBookSchema } from '../../src/model/price-book.js';
import { overrunCost } from '../../src/price/index.js';
import { at } from '../helpers/clock.js';

// A second reckoning in whole numbers (BigInt, tenths of a penny and minutes from the booked end), written from the words
// of the price room's README and sharing no code with it. Everything below is constructed.
const END = '2027-05-13 05:00';
const trains = [
  { due: 10, weight: 1n },
  { due: 15, weight: 2n },
  { due: 16, weight: 1n },
  { due: 40, weight: 3n },
  { due: 95, weight: 1n },
  { due: 130, weight: 2n },
  { due: 200, weight: 1n },
];
const HEADWAY = 4;
const CANCEL_AFTER = 60;
const DEEMED = 90n;
/** Pence a weighted minute. */
const RATE = 6240n;

function delayPence(late: number): bigint {
  let ahead: { due: number; leaves: number } | null = null;
  let weighted = 0n;
  for (const { due, weight } of trains) {
    let leaves = Math.max(due, late);
    if (ahead) leaves = Math.max(leaves, ahead.leaves + Math.min(HEADWAY, due - ahead.due));
    const wait = leaves - due;
    if (wait <= 0) break;
    weighted += weight * (wait > CANCEL_AFTER ? DEEMED : BigInt(wait));
    ahead = { due, leaves };
  }
  return weighted * RATE;
}

const roundUp = (minutes: number, block: number): number => Math.ceil(minutes / block) * block;

/** Half a penny and more is rounded up. */
const rounded = (over: bigint, under: bigint): bigint => (2n * over + under) / (2n * under);

/** Three of a gang at 33.50 an hour: night rate (one and a half) to 06:00, an hour past the booked end. */
function gangPence(late: number): bigint {
  const paid = roundUp(late, 15);
  const night = BigInt(Math.min(paid, 60));
  const day = BigInt(Math.max(0, paid - 60));
  return rounded(3n * 3350n * (15n * night + 10n * day), 600n);
}

/** A crane at 240 an hour, there for the six hours of the window and owed eight: its first two hours late are owed. */
function cranePence(late: number): bigint {
  return BigInt(Math.max(0, roundUp(late, 15) - 120)) * 400n;
}

/** Each 10 minutes begun: 50 %, then 75 % from 30, then all of 180.00 from 60; never more than 2,500.00. */
function openingPence(late: number): bigint {
  let sum = 0n;
  for (let start = 0; start < late; start += 10)
    sum += start < 30 ? 9000n : start < 60 ? 13_500n : 18_000n;
  return sum < 250_000n ? sum : 250_000n;
}

/** Over 90 minutes: trains due up to 100 minutes after handback lose 2.5 minutes each, by weight. */
function restrictionPence(late: number): bigint {
  if (late <= 90) return 0n;
  const weight = trains
    .filter((train) => train.due < late + 100)
    .reduce((sum, item) => sum + item.weight, 0n);
  return rounded(weight * 25n * RATE, 10n);
}

const busPence = (late: number): bigint => (late > 30 ? 280_000n : 0n);

const prices = priceBookSchema.parse({
  schema: 1,
  name: 'Constructed',
  currency: 'GBP',
  source: 'Constructed',
  delay: {
    by: 'train',
    rate: '62.40',
    headwayMinutes: HEADWAY,
    cancelAfterMinutes: CANCEL_AFTER,
    deemedMinutes: Number(DEEMED),
  },
  standing: {
    labour: ['gang'],
    blockMinutes: 15,
    factors: [{ name: 'night', factor: '1.5', on: 'labour', from: '22:00', to: '06:00' }],
  },
  fixed: [{ code: 'buses', name: 'Buses', afterMinutes: 30, amount: '2800' }],
  lateOpening: [
    {
      code: 'opening',
      name: 'Late opening',
      rate: { amount: '1080', perMinutes: 60 },
      intervalMinutes: 10,
      bands: [
        { afterMinutes: 0, percent: '50' },
        { afterMinutes: 30, percent: '75' },
        { afterMinutes: 60 },
      ],
      cap: '2500',
    },
  ],
  restriction: { afterMinutes: 90, minutesLostPerTrain: '2.5', liftedAfterMinutes: 100 },
});
const end = at(END);
const priced = (minutes: number) =>
  overrunCost({
    window: {
      id: 'W1',
      title: '',
      start: at('2027-05-12 23:00'),
      end,
      zone: 'Europe/London',
      lines: [],
      isolation: [],
      status: 'confirmed',
      trainsAfter: '',
    },
    overrunMinutes: minutes,
    trains: trains.map((train, i) => ({
      id: `T${i}`,
      passesAt: end + train.due * 60_000,
      weight: Number(train.weight),
    })),
    resources: [
      { id: 'gang', availability: [{ capacity: 3 }], ratePerHour: 33.5 },
      { id: 'crane', availability: [{ capacity: 1 }], ratePerHour: 240, leastHours: 8 },
    ],
    prices,
  });
const pence = (text: string): bigint => BigInt(text.replace('.', ''));

describe('overruns against a reckoning in whole numbers that shares no code', () => {
  const reckoned = {
    'operator-delay': delayPence,
    'standing-gang': gangPence,
    'standing-crane': cranePence,
    opening: openingPence,
    restriction: restrictionPence,
    buses: busPence,
  };

  it('agree to the penny, head by head, at every minute of five hours', () => {
    for (let minutes = 0; minutes <= 300; minutes += 1) {
      const result = priced(minutes);
      const found = Object.fromEntries(result.rows.map((row) => [row.code, pence(row.amount)]));
      const wanted = Object.fromEntries(
        Object.entries(reckoned).map(([code, cost]) => [code, cost(minutes)]),
      );
      expect([minutes, found]).toEqual([minutes, wanted]);
      expect(pence(result.total)).toBe(Object.values(wanted).reduce((sum, item) => sum + item, 0n));
    }
  });

  it('come to these sums, reckoned once by hand', () => {
    // 45 late: the first train 35; the second leaves at 49, 34 late and twice as heavy; the third at 50, 34 late; the fourth
    // at 54, 14 late and three times as heavy; the fifth on time: 35 + 68 + 34 + 42 = 179 at 62.40.
    expect(delayPence(45)).toBe(1_116_960n);
    // 3 x 33.50 x three quarters of an hour x 1.5 = 113.0625.
    expect(gangPence(45)).toBe(11_306n);
    expect(openingPence(95)).toBe(27_000n + 40_500n + 4n * 18_000n);
    expect(cranePence(121)).toBe(15n * 400n);
  });
});
