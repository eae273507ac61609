import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { priceBookSchema } from '../../../src/model/price-book.js';
import { costCurve } from '../../../src/price/index.js';
import { aBook, aResource, aWindow, trainsDue } from './builders.js';

const bare = { schema: 1, name: 'bare', currency: 'GBP', source: 'made for the test' };
const faults = (more: Record<string, unknown>): string[] => {
  const read = priceBookSchema.safeParse({ ...bare, ...more });
  return read.success
    ? []
    : read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
};

describe('a price book', () => {
  it('may be bare, and then charges nothing', () => {
    const curve = costCurve(
      { window: aWindow(), prices: aBook(), trains: trainsDue([0]), resources: [] },
      60,
    );
    expect(curve.minor.every((sum) => sum === 0)).toBe(true);
  });

  it('takes a rate as text, as a number, or as money per minutes', () => {
    for (const [written, read] of [
      ['62.40', { amount: '62.40', perMinutes: 1 }],
      [62.4, { amount: '62.4', perMinutes: 1 }],
      [
        { amount: '900', perMinutes: 60 },
        { amount: '900', perMinutes: 60 },
      ],
    ])
      expect(aBook({ delay: { by: 'train', rate: written } }).delay).toMatchObject({ rate: read });
  });

  it.each([
    ['money with a sign', { fixed: [{ code: 'a', name: 'A', afterMinutes: 1, amount: '-5' }] }],
    ['money with a comma', { fixed: [{ code: 'a', name: 'A', afterMinutes: 1, amount: '1,000' }] }],
    ['a currency in words', { currency: 'pounds' }],
    ['an unknown field', { discount: 3 }],
    ['no source', { source: '' }],
    ['damages as basis without damages', { basis: 'damages' }],
    [
      'a restriction without any rate',
      { restriction: { minutesLostPerTrain: '2', liftedAfterMinutes: 60 } },
    ],
    [
      'a cancelled train cheaper than a late one',
      { delay: { by: 'train', rate: '1', cancelAfterMinutes: 60, deemedMinutes: 59 } },
    ],
    [
      'deemed minutes without a threshold',
      { delay: { by: 'train', rate: '1', deemedMinutes: 59 } },
    ],
    [
      'bands out of order',
      {
        delay: {
          by: 'bands',
          bands: [
            { afterMinutes: 5, rate: '1' },
            { afterMinutes: 5, rate: '2' },
          ],
        },
      },
    ],
    ['half a clock band', { standing: { factors: [{ name: 'n', factor: '2', from: '22:00' }] } }],
    [
      'two charges of one code',
      {
        fixed: [{ code: 'a', name: 'A', afterMinutes: 1, amount: '5' }],
        lengths: [{ code: 'a', name: 'B', moreThanHours: 60 }],
      },
    ],
  ])('is refused with %s', (_, more) => {
    expect(faults(more)).toHaveLength(1);
  });

  it('says what a figure should look like', () => {
    expect(faults({ currency: 'pounds' })).toEqual([
      'currency: a currency in three capital letters such as GBP',
    ]);
  });

  it('reads back what it wrote', () => {
    const sample: unknown = JSON.parse(
      readFileSync(new URL('../../../sample-csv/prices.json', import.meta.url), 'utf8'),
    );
    const book = priceBookSchema.parse(sample);
    expect(priceBookSchema.parse(JSON.parse(JSON.stringify(book)))).toEqual(book);
    expect(book.source).toContain('Invented');
  });

  it('of the sample prices every head, and never less for a longer overrun', () => {
    const prices = priceBookSchema.parse(
      JSON.parse(readFileSync(new URL('../../../sample-csv/prices.json', import.meta.url), 'utf8')),
    );
    const curve = costCurve(
      {
        window: aWindow(),
        prices,
        trains: trainsDue(Array.from({ length: 80 }, (_, i) => i * 7)),
        resources: [aResource('gang', 33.5), aResource('crane', 240, { leastHours: 4 })],
        lostUnits: { units: 2, pricePerUnit: '1800' },
      },
      240,
    );
    expect(curve.falls).toEqual([]);
    const heads = new Set(curve.heads.filter((h) => h.minor[240]! > 0).map((h) => h.head));
    expect([...heads].sort()).toEqual(
      ['damages', 'fixed', 'operator-delay', 're-booking', 'restriction', 'standing'].sort(),
    );
  });
});
