import { describe, expect, it } from 'vitest';
import type { Activity } from '../../../src/model/index.js';
import type { OverrunInputs } from '../../../src/price/index.js';
import { overrunCost } from '../../helpers/prices-in-english.js';
import { aBook, aResource, at, aWindow, trainsDue } from './builders.js';

const told = (
  book: Record<string, unknown>,
  minutes: number,
  more: Partial<OverrunInputs> = {},
): string =>
  overrunCost({
    window: aWindow(),
    overrunMinutes: minutes,
    trains: [],
    resources: [],
    prices: aBook(book),
    ...more,
  }).notPriced.join('\n');

describe('what a price leaves out', () => {
  const delay = { by: 'train', rate: '1' };

  it('is every head that the book has no entry for', () => {
    const bare = told({}, 10);
    for (const words of ['Delay to trains', 'speed restriction', 'Work left over', 'key dates'])
      expect(bare).toContain(words);
    const full = told(
      { delay, restriction: { minutesLostPerTrain: '1', liftedAfterMinutes: 5 } },
      1,
      { trains: trainsDue([0, 60]), lostUnits: { units: 0, pricePerUnit: '1' } },
    );
    for (const words of ['Delay to trains', 'speed restriction', 'Work left over'])
      expect(full).not.toContain(words);
  });

  it('is the trains beyond the list, from the overrun on that holds the last one listed', () => {
    const listed = { trains: trainsDue([0, 30]) };
    expect(told({ delay }, 30, listed)).not.toContain('train list ends');
    expect(told({ delay }, 31, listed)).toContain(
      'The train list ends at Thu 13 May 2027 05:30 (T2), which an overrun of 31 min or more holds',
    );
    expect(told({ delay }, 31)).toContain('No train is listed');
  });

  it('is the time of a resource without a rate, and a key date without a sum', () => {
    const deck: Activity = {
      id: 'A',
      package: 'Deck',
      title: 'A',
      after: [],
      work: { kind: 'whole', minutes: 60 },
      lines: [],
      isolation: [],
      resources: [{ resource: 'rail saw', amount: 1 }],
      loud: false,
      place: 'inside',
      keyDate: at('2027-05-13 06:00'),
    };
    const placements = [
      {
        activity: 'A',
        window: 'W1',
        from: at('2027-05-13 01:00'),
        to: at('2027-05-13 02:00'),
      },
    ];
    const plan = { activities: [deck], placements, resources: [aResource('gang', 10)] };
    const text = told({ keyDates: [{ package: 'Other', perDay: '1' }] }, 10, plan);
    expect(text).toContain('rail saw is not priced: it has no rate');
    expect(text).toContain('key date of Deck is not priced');
    expect(told({ keyDates: [{ perDay: '1' }] }, 10, plan)).not.toContain('key date of Deck');
  });

  // Constructed: three trains run under the limit before the later work lifts it at 07:00, each loses 2 minutes at 5.
  it('is a speed left by planned work only where the book has no restriction', () => {
    const relay = (id: string, more: Partial<Activity> = {}): Activity => ({
      id,
      package: 'Track',
      title: id,
      after: [],
      work: { kind: 'whole', minutes: 60 },
      lines: ['Up'],
      isolation: [],
      resources: [],
      loud: false,
      place: 'inside',
      ...more,
    });
    const activities = [relay('Relay', { speedAfter: { value: 20, unit: 'mph' } }), relay('Tamp')];
    const on = (activity: string, window: string, from: string, to: string) => ({
      activity,
      window,
      from: at(`2027-05-13 ${from}`),
      to: at(`2027-05-13 ${to}`),
    });
    const first = on('Relay', 'W1', '01:00', '02:00');
    const later = [first, on('Tamp', 'W2', '06:00', '07:00')];
    const trains = trainsDue([0, 60, 119, 120]);
    const book = {
      delay,
      restriction: {
        minutesLostPerTrain: '2',
        liftedAfterMinutes: 30,
        rate: '5',
        afterMinutes: 90,
      },
    };
    const rows = (placements: readonly (typeof first)[], minutes: number) =>
      overrunCost({
        window: aWindow(),
        overrunMinutes: minutes,
        trains,
        resources: [],
        activities,
        placements,
        prices: aBook(book),
      })
        .rows.filter((row) => row.head === 'restriction')
        .map((row) => [row.code, row.amount]);
    expect(rows(later, 0)).toEqual([
      ['restriction-planned', '30.00'],
      ['restriction', '0.00'],
    ]);
    // 100 min late it is lifted at 07:10, and one more train has run under it.
    expect(rows(later, 100)).toEqual([
      ['restriction-planned', '30.00'],
      ['restriction', '10.00'],
    ]);
    // Lifted in the same window: nothing is left.
    expect(rows([first, on('Tamp', 'W1', '02:00', '03:00')], 0)).toEqual([['restriction', '0.00']]);
    const unpriced = { activities, placements: later };
    expect(told({ delay }, 0, unpriced)).toContain('20 mph is left on the line after Relay');
  });
});
