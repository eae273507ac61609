import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMinutes, type Instant } from '../../../src/calendar/index.js';
import type { Placement } from '../../../src/planner/fit/types.js';
import type { Activity } from '../../../src/model/index.js';
import { priceBookSchema } from '../../../src/model/price-book.js';
import { costCurve, daysLate } from '../../../src/price/index.js';
import { keyDateLines as linesByKey } from '../../../src/price/key-dates.js';
import { keyDateLines, overrunCost } from '../../helpers/prices-in-english.js';
import { aBook, at, aWindow, zone } from './builders.js';

const window = aWindow();
const due = at('2027-05-13 06:00');

const activity = (id: string, over: Partial<Activity> = {}): Activity => ({
  id,
  package: 'P1',
  title: id,
  after: [],
  work: { kind: 'whole', minutes: 60 },
  lines: [],
  isolation: [],
  resources: [],
  loud: false,
  place: 'inside',
  keyDate: due,
  ...over,
});
const visit = (activity: string, to: Instant, window: string | null = 'W1'): Placement => ({
  activity,
  window,
  from: addMinutes(to, -60),
  to,
});
const book = (keyDates: unknown[]) => aBook({ keyDates });
const base = {
  window,
  trains: [],
  resources: [],
  activities: [activity('A1')],
  placements: [visit('A1', at('2027-05-13 04:10'))],
};
const keyRows = (overrunMinutes: number, over: object) =>
  overrunCost({ ...base, prices: book([{ perDay: '100' }]), ...over, overrunMinutes }).rows.filter(
    (row) => row.head === 'key-dates',
  );

describe('days late', () => {
  // Summer Time Order 2002 (SI 2002/262): clocks go forward on 28 March and back on 31 October 2027.
  it.each([
    ['2027-05-13 06:00', '2027-05-13 06:00', 0],
    ['2027-05-13 06:00', '2027-05-12 23:00', 0],
    ['2027-05-13 06:00', '2027-05-13 06:01', 1],
    ['2027-05-13 06:00', '2027-05-14 06:00', 1],
    ['2027-05-13 06:00', '2027-05-14 06:01', 2],
    ['2027-05-13 06:00', '2027-06-12 06:00', 30],
    // 25 hours, 23 hours: one day of the clock each.
    ['2027-10-30 06:00', '2027-10-31 06:00', 1],
    ['2027-10-30 06:00', '2027-10-31 06:01', 2],
    ['2027-03-27 06:00', '2027-03-28 06:00', 1],
    ['2027-03-27 06:00', '2027-03-28 06:01', 2],
    ['2027-01-04 00:00', '2027-12-31 00:00', 361],
  ])('due %s and done %s is %i', (from, to, days) => {
    expect(daysLate(at(from), at(to), zone)).toBe(days);
  });
});

describe('the price of a missed key date', () => {
  it('agrees with whole pennies counted without any decimal', () => {
    for (const [perDay, once, cap] of [
      ['1234.56', '0', undefined],
      ['0.01', '999999.99', undefined],
      ['1500', '5000', '12000'],
      ['33.33', '0.01', '33.34'],
    ] as const) {
      const pence = (text: string): bigint => {
        const [whole, part = ''] = text.split('.');
        return BigInt(whole! + part.padEnd(2, '0'));
      };
      for (let days = 0; days <= 40; days += 1) {
        const end = days === 0 ? due : addMinutes(due, (days - 1) * 1440 + 1);
        const line = keyDateLines([activity('A1')], [visit('A1', end)], zone, {
          ...book([{ perDay, once, ...(cap && { cap }) }]),
        })[0]!;
        const whole = days === 0 ? 0n : BigInt(days) * pence(perDay) + pence(once);
        const least = cap !== undefined && whole > pence(cap) ? pence(cap) : whole;
        expect(pence(line.amount!)).toBe(least);
        expect(line.daysLate).toBe(days);
      }
    }
  });

  it('by its minutes is rounded once, half up', () => {
    for (const minutes of [1, 7, 719, 720, 721, 1439, 1441, 99_999]) {
      const line = keyDateLines([activity('A1')], [visit('A1', addMinutes(due, minutes))], zone, {
        ...book([{ perDay: '1000.01', once: '0.5', partDay: 'in proportion' }]),
      })[0]!;
      const over = 100_001n * BigInt(minutes) + 50n * 1440n;
      expect(BigInt(line.amount!.replace('.', ''))).toBe((2n * over + 1440n) / 2880n);
    }
  });

  it('is that of the package, else that of all; without either it is not charged', () => {
    const prices = book([{ perDay: '100' }, { package: 'P2', once: '7', name: 'Second deck' }]);
    const activities = [activity('A1'), activity('B1', { package: 'P2' })];
    const placements = [visit('A1', addMinutes(due, 1)), visit('B1', addMinutes(due, 1))];
    const lines = keyDateLines(activities, placements, zone, prices);
    expect(lines.map((line) => [line.title, line.amount])).toEqual([
      ['Key date: P1', '100.00'],
      ['Second deck: P2', '7.00'],
    ]);
    // What nobody named is said in the language of the page.
    expect(linesByKey(activities, placements, zone, prices)[0]!.title).toMatchObject({
      key: 'key-date-of',
    });
    const only = keyDateLines(activities, placements, zone, book([{ package: 'P2', once: '7' }]));
    expect(only.map((line) => line.amount)).toEqual([null, '7.00']);
    expect(keyDateLines(activities, placements, zone, aBook())).toEqual([]);
  });

  it('is not known while some of the work has no place, and of done work there is none', () => {
    const half = activity('A1', {
      work: {
        kind: 'units',
        units: 4,
        done: 1,
        minutesPerUnit: 10,
        setUpMinutes: 0,
        makeSafeMinutes: 0,
      },
    });
    const done = activity('A2', {
      work: {
        kind: 'units',
        units: 4,
        done: 4,
        minutesPerUnit: 10,
        setUpMinutes: 0,
        makeSafeMinutes: 0,
      },
    });
    const placements = [{ ...visit('A1', addMinutes(due, 1)), units: 2 }];
    const [line, ...rest] = keyDateLines([half, done], placements, zone, book([{ once: '1' }]));
    expect([line!.forecast, line!.amount, rest]).toEqual([null, null, []]);
    // One of two pieces without a place is enough.
    const whole = visit('A3', addMinutes(due, 1));
    const priced = book([{ once: '1' }]);
    const [both] = keyDateLines([half, activity('A3')], [...placements, whole], zone, priced);
    expect(both!.forecast).toBeNull();
    const r = overrunCost({
      ...base,
      ...{ activities: [half], placements, prices: book([{ once: '1' }]), overrunMinutes: 900 },
    });
    expect(r.rows.some((row) => row.head === 'key-dates')).toBe(false);
    expect(r.notPriced.join()).toContain('Not all of the work of P1 has a place');
  });
});

describe('an overrun that makes a key date late', () => {
  const page = readFileSync(new URL('../../../src/price/README.md', import.meta.url), 'utf8');
  const section = page.slice(page.indexOf('A worked example: a key date'));
  const worked = [...section.matchAll(/^\| (\d+) +\| (\d) +\| ([\d.]+) +\|$/gm)];
  const prices = priceBookSchema.parse({
    ...aBook(),
    ...(JSON.parse(/```json\n([^`]*)```/.exec(section)![1]!) as object),
  });

  it('has a worked example to check', () => expect(worked).toHaveLength(7));

  it.each(worked.map(([, minutes, days, amount]) => ({ minutes, days, amount })))(
    'comes out as on the page at $minutes minutes',
    ({ minutes, days, amount }) => {
      const rows = keyRows(Number(minutes), { prices });
      expect(rows.map((row) => row.amount)).toEqual([amount]);
      expect(rows[0]!.inputs.find((input) => input.name.startsWith('days'))!.value).toBe(days);
      expect(rows[0]!.counted).toBe(true);
    },
  );

  it('is told apart from what the plan misses by itself', () => {
    const placements = [visit('A1', at('2027-05-13 04:30'))];
    const activities = [activity('A1', { keyDate: at('2027-05-12 06:00') })];
    const [planned, more] = keyRows(61, { placements, activities });
    expect([planned!.code, planned!.amount]).toEqual(['key-date-planned-P1-2027-05-12', '100.00']);
    // Ends 06:01, the second day begun.
    expect([more!.code, more!.amount]).toEqual(['key-date-P1-2027-05-12', '100.00']);
    expect(more!.formula).toContain('less GBP 100.00 that the plan alone costs');
    expect(
      keyRows(61, { placements, activities, keyDates: 'overrun' }).map((row) => row.amount),
    ).toEqual(['100.00']);
    expect(keyRows(61, { placements, activities, keyDates: 'none' })).toEqual([]);
  });

  it('is none where the last of the work is in another window', () => {
    const activities = [activity('A1'), activity('A2')];
    const placements = [...base.placements, visit('A2', at('2027-05-14 04:00'), 'W2')];
    expect(keyRows(1000, { activities, placements })).toEqual([]);
  });

  it('is not priced without a plan of the work, and says so', () => {
    const { placements: _, activities: __, ...bare } = base;
    const r = overrunCost({ ...bare, prices: book([{ once: '1' }]), overrunMinutes: 900 });
    expect(r.rows).toEqual([]);
    expect(r.notPriced.join()).toContain('key dates that an overrun makes late are not priced');
  });

  it('stands beside damages for the late handback, unless they are said to replace it', () => {
    const damages = { rate: '1' };
    const both = { ...aBook({ basis: 'damages', damages, keyDates: [{ once: '9' }] }) };
    expect(keyRows(61, { prices: both })[0]!.counted).toBe(true);
    const one = aBook({
      basis: 'damages',
      damages: { ...damages, replaces: ['key-dates'] },
      keyDates: [{ once: '9' }],
    });
    expect(keyRows(61, { prices: one })[0]!.counted).toBe(false);
  });

  it('is a step of the curve at its first minute and at each further day, and never falls', () => {
    const curve = costCurve({ ...base, prices: book([{ perDay: '100', once: '50' }]) }, 3000);
    expect(curve.steps.map((step) => [step.atMinute, step.rise])).toEqual([
      [61, '150.00'],
      [1501, '100.00'],
      [2941, '100.00'],
    ]);
    expect(curve.falls).toEqual([]);
    const slope = costCurve(
      { ...base, prices: book([{ perDay: '1440', partDay: 'in proportion' }]) },
      200,
    );
    expect([slope.amounts[60], slope.amounts[61], slope.amounts[200]]).toEqual([
      '0.00',
      '1.00',
      '140.00',
    ]);
    expect(slope.steps.map((step) => step.atMinute)).toEqual([61]);
  });
});

describe('any key date', () => {
  const money = fc.integer({ min: 0, max: 5_000_000 });
  const text = (pence: number): string => (pence / 100).toFixed(2);

  it('costs what a count in whole pennies and whole minutes says, never less for a longer overrun', () => {
    fc.assert(
      fc.property(
        fc.record({
          perDay: money.filter((value) => value > 0),
          once: money,
          cap: fc.option(money, { nil: undefined }),
          whole: fc.boolean(),
          dueAfter: fc.integer({ min: -5000, max: 2000 }),
          endsBefore: fc.integer({ min: 0, max: 300 }),
          overrun: fc.integer({ min: 0, max: 4000 }),
        }),
        ({ perDay, once, cap, whole, dueAfter, endsBefore, overrun }) => {
          const prices = book([
            {
              ...{ perDay: text(perDay), once: text(once) },
              ...(cap !== undefined && { cap: text(cap) }),
              partDay: whole ? 'whole' : 'in proportion',
            },
          ]);
          const activities = [activity('A1', { keyDate: addMinutes(window.end, dueAfter) })];
          const placements = [visit('A1', addMinutes(window.end, -endsBefore))];
          /** In a week of May no clock changes: a day is 1440 minutes. */
          const costOf = (minutesAfterEnd: number): bigint => {
            const late = minutesAfterEnd - dueAfter;
            if (late <= 0) return 0n;
            const [p, l, o] = [BigInt(perDay), BigInt(late), BigInt(once)];
            const sum = whole
              ? p * ((l + 1439n) / 1440n) + o
              : (2n * (p * l + o * 1440n) + 1440n) / 2880n;
            return cap !== undefined && sum > BigInt(cap) ? BigInt(cap) : sum;
          };
          const at = (minutes: number): bigint[] => {
            const rows = overrunCost({
              ...{ ...base, prices, activities, placements, overrunMinutes: minutes },
            }).rows;
            return rows.map((row) => BigInt(row.amount.replace('.', '')));
          };
          const planned = costOf(-endsBefore);
          const added = (minutes: number): bigint =>
            (minutes === 0 ? planned : costOf(minutes)) - planned;
          expect(at(overrun)).toEqual([...(planned > 0n ? [planned] : []), added(overrun)]);
          expect(at(overrun + 1).at(-1)! >= at(overrun).at(-1)!).toBe(true);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('key dates in a price book', () => {
  it.each([
    ['that cost nothing', [{ package: 'P1' }]],
    [
      'twice for one package',
      [
        { once: '1', package: 'P1' },
        { once: '2', package: 'P1' },
      ],
    ],
    ['twice for all', [{ once: '1' }, { once: '2' }]],
    ['with an unknown field', [{ once: '1', perWeek: '4' }]],
    ['with a negative sum', [{ perDay: '-1' }]],
  ])('are refused %s', (_, keyDates) => {
    expect(() => book(keyDates)).toThrow();
  });

  it('need not be there: a book from before has none', () => {
    expect(aBook().keyDates).toEqual([]);
  });
});
