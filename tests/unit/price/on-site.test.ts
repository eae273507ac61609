import { describe, expect, it } from 'vitest';
import type { Activity } from '../../../src/model/index.js';
import type { Placement } from '../../../src/planner/fit/types.js';
import type { OverrunInputs } from '../../../src/price/index.js';
import { callOuts, overrunCost } from '../../helpers/prices-in-english.js';
import { aBook, aResource, at, aWindow } from './builders.js';

const work = (id: string, resources: Record<string, number>): Activity => ({
  id,
  package: 'P',
  title: id,
  after: [],
  work: { kind: 'whole', minutes: 60 },
  lines: [],
  isolation: [],
  resources: Object.entries(resources).map(([resource, amount]) => ({ resource, amount })),
  loud: false,
  place: 'inside',
});
const place = (activity: string, from: string, to: string): Placement => ({
  activity,
  window: 'W1',
  from: at(from),
  to: at(to),
});

// A blockade of 52 h. The crane lifts from 00:00 to 06:00 on the first night and is not needed again; the gang works to the end.
const window = aWindow({ start: at('2027-05-14 23:00'), end: at('2027-05-17 03:00') });
const crane = aResource('crane', 240, { leastHours: 8 });
const gang = aResource('gang', 60, { leastHours: 4 });
const activities = [work('Lift', { crane: 1, gang: 2 }), work('Test', { gang: 1 })];
const placements = [
  place('Lift', '2027-05-15 00:00', '2027-05-15 06:00'),
  place('Test', '2027-05-17 01:00', '2027-05-17 02:00'),
];
const asked = (minutes: number, standing: unknown = {}, more: Partial<OverrunInputs> = {}) =>
  overrunCost({
    window,
    overrunMinutes: minutes,
    trains: [],
    resources: [crane, gang],
    activities,
    placements,
    prices: aBook({ standing }),
    ...more,
  });
const amounts = (minutes: number, standing: unknown = {}): Record<string, string> =>
  Object.fromEntries(asked(minutes, standing).rows.map((row) => [row.code, row.amount]));

describe('plant and people on site', () => {
  it('pays nothing more for a crane whose last lift was two days before', () => {
    // Constructed: a gang of one at 60 an hour is a pound a minute; its least hours were used up long before.
    expect(amounts(1)).toEqual({ 'standing-crane': '0.00', 'standing-gang': '1.00' });
    expect(amounts(45)).toEqual({ 'standing-crane': '0.00', 'standing-gang': '45.00' });
    const row = asked(45).rows.find((item) => item.code === 'standing-crane')!;
    expect(row.formula).toContain('leaves at Sat 15 May 2027 06:00, before handback');
  });

  it('shows what each is owed as planned, which an option is charged too', () => {
    const owed = asked(45).onSite.map((row) => [row.resource, row.amount, row.owed]);
    // The crane 8 h for the 6 it works; one of the gang from the lift to the test, the other for the lift.
    expect(owed).toEqual([
      ['crane', 1, '1920.00'],
      ['gang', 1, '3000.00'],
      ['gang', 1, '360.00'],
    ]);
    const paid = callOuts(window, {
      resources: [crane, gang],
      activities,
      placements,
      prices: aBook(),
      holidays: [],
    });
    expect(paid.map((callOut) => [callOut.resource, callOut.amount])).toEqual(
      owed.map(([resource, , sum]) => [resource, sum]),
    );
  });

  it('pays nothing more for a crane that lifts beside the last piece and is done before it', () => {
    // The crane lifts from 01:30 to 01:45 beside the test, which ends at 02:00.
    const beside = [
      place('Lift', '2027-05-17 01:30', '2027-05-17 01:45'),
      place('Test', '2027-05-17 01:00', '2027-05-17 02:00'),
    ];
    const { rows, onSite } = asked(45, {}, { placements: beside, resources: [crane, gang] });
    expect(rows.find((row) => row.code === 'standing-crane')).toMatchObject({
      amount: '0.00',
      formula:
        'it leaves at Mon 17 May 2027 01:45, before handback: its own work is over 15 min before the last piece, Test, ends',
    });
    // Of the gang two go with the lift; the one who is at the test to its end is kept.
    expect(onSite.map((row) => [row.resource, row.amount, row.kept])).toEqual([
      ['crane', 1, false],
      ['gang', 1, true],
      ['gang', 2, false],
    ]);
    const ends = [place('Lift', '2027-05-17 01:30', '2027-05-17 02:00'), beside[1]!];
    expect(asked(45, {}, { placements: ends }).onSite.map((row) => row.kept)).not.toContain(false);
  });

  it('keeps the crane where the price book says that it stays, for all windows or for one', () => {
    const stays = { resource: 'crane', leaves: 'at handback' };
    expect(amounts(30, { onSite: [stays] })['standing-crane']).toBe('120.00');
    expect(amounts(30, { onSite: [{ ...stays, window: 'W1' }] })['standing-crane']).toBe('120.00');
    expect(amounts(30, { onSite: [{ ...stays, window: 'W9' }] })['standing-crane']).toBe('0.00');
    const both = [stays, { resource: 'crane', window: 'W1', leaves: 'after its work' }];
    expect(amounts(30, { onSite: both })['standing-crane']).toBe('0.00');
  });

  it('pays a late call by what the overrun adds to its least hours', () => {
    // Called at 01:00 for the test, 5 h at least: owed to 06:00, three hours past the booked end.
    const late = [place('Test', '2027-05-17 01:00', '2027-05-17 02:00')];
    const five = aResource('gang', 60, { leastHours: 5 });
    const sum = (minutes: number, standing: unknown = {}): string =>
      asked(minutes, standing, { placements: late, resources: [five] }).total;
    expect([0, 1, 179, 180, 181, 240].map((m) => sum(m))).toEqual([
      '0.00',
      '0.00',
      '0.00',
      '0.00',
      '1.00',
      '60.00',
    ]);
    // Called an hour earlier the hours end an hour earlier.
    const early = { onSite: [{ resource: 'gang', callMinutesBefore: 60 }] };
    expect([120, 121].map((m) => sum(m, early))).toEqual(['0.00', '1.00']);
    // Terms by which an overrun is a new hire.
    expect(sum(1, { leastHours: 'overrun' })).toBe('300.00');
  });
});
