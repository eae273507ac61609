import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { percentOfShare, shareOfPercent } from '../../../src/price/index.js';
import { account, overrunCost } from '../../helpers/prices-in-english.js';
import { aBook, aResource, at, aWindow, trainsDue } from './builders.js';

const window = aWindow();
const prices = aBook({
  delay: { by: 'train', rate: '10', cancelAfterMinutes: 60, deemedMinutes: 90, source: 'letter 7' },
  fixed: [{ code: 'buses', name: 'Buses', afterMinutes: 20, amount: '500' }],
  damages: { rate: '7' },
});
const base = {
  window,
  prices,
  trains: trainsDue([0, 10, 25, 40]),
  resources: [aResource('gang', 60)],
  actualHandback: window.end + 30 * MINUTE,
};
const row = (a: ReturnType<typeof account>, code: string) => a.rows.find((r) => r.code === code);

describe('the account after the event', () => {
  it('takes a recorded time before the queue, and works out the trains nobody recorded', () => {
    const a = account({
      ...base,
      trainActuals: [
        {
          train: 'T1',
          passedAt: window.end + 33 * MINUTE,
          claimedBy: 'north operator',
          evidence: 'signal log 114',
        },
      ],
    });
    expect(a.overrunMinutes).toBe(30);
    expect(
      a.rows
        .filter((r) => r.head === 'operator-delay')
        .map((r) => [r.code, r.amount, r.basis, r.evidenced]),
    ).toEqual([
      ['train-T1', '330.00', 'recorded', true],
      ['train-T2', '200.00', 'worked out', false],
      ['train-T3', '50.00', 'worked out', false],
    ]);
    expect(row(a, 'train-T1')).toMatchObject({
      claimedBy: 'north operator',
      evidence: 'signal log 114',
      source: 'letter 7',
      formula: '33 min x weight 1 x GBP 10 a minute = GBP 330.00',
    });
    expect(a.notes.join()).toContain('2 late trains have no recorded time');
  });

  it('has no row for a train recorded on time, though the queue would have held it', () => {
    const a = account({
      ...base,
      trainActuals: [{ train: 'T3', passedAt: window.end + 25 * MINUTE, claimedBy: 'north' }],
    });
    expect(row(a, 'train-T3')).toBeUndefined();
  });

  it('counts cancelled trains, and trains past the threshold, at their deemed minutes', () => {
    const a = account({
      ...base,
      trainActuals: [
        { train: 'T1', passedAt: null, claimedBy: 'north' },
        { train: 'T2', passedAt: window.end + 71 * MINUTE, claimedBy: 'north' },
      ],
    });
    expect(row(a, 'train-T1')!.amount).toBe('900.00');
    expect(row(a, 'train-T2')!.amount).toBe('900.00');
  });

  it('says that a cancelled train counts nothing where the book gives it no minutes', () => {
    const bare = { ...base, prices: aBook({ delay: { by: 'train', rate: '10' } }) };
    const late = { train: 'T2', passedAt: window.end + 71 * MINUTE, claimedBy: 'north' };
    const notesWith = (...trainActuals: object[]) =>
      account({ ...bare, trainActuals: trainActuals as (typeof late)[] }).notes.join(' ');
    expect(notesWith({ train: 'T1', passedAt: null, claimedBy: 'north' })).toMatch(/T1.*cancelled/);
    expect(notesWith(late)).not.toMatch(/cancelled/);
    expect(row(account({ ...bare, trainActuals: [late] }), 'train-T2')!.amount).toBe('610.00');
  });

  it('charges only our share, and refuses a share that is none', () => {
    const half = {
      train: 'T1',
      passedAt: window.end + 33 * MINUTE,
      claimedBy: 'north',
      share: '0.5',
    };
    expect(row(account({ ...base, trainActuals: [half] }), 'train-T1')!.amount).toBe('165.00');
    expect(() => account({ ...base, trainActuals: [{ ...half, share: '1.5' }] })).toThrow(
      RangeError,
    );
  });

  it('takes the share off a worked-out row exactly, and rounds once: an integer reference', () => {
    const whole = row(account(base), 'train-T1')!;
    const pence = BigInt(whole.amount.replace('.', ''));
    for (const percent of ['0', '0.5', '12.5', '33.333333', '66.67', '99.999999', '100']) {
      const share = shareOfPercent(percent)!;
      const claims = { 'train-T1': { claimedBy: 'north', share } };
      const part = row(account({ ...base, claims }), 'train-T1')!;
      const [units, decimals = ''] = percent.split('.');
      const millionths = BigInt(units + decimals.padEnd(6, '0'));
      const over = pence * millionths;
      const under = 100_000_000n;
      expect(BigInt(part.amount.replace('.', ''))).toBe((2n * over + under) / (2n * under));
      expect(part.share).toBe(share);
      expect(percentOfShare(share)).toBe(percent);
      if (percent !== '100') expect(part.formula).toContain(`our share of ${percent} %`);
    }
  });

  it('reads a percentage as people type it, and nothing that is none', () => {
    expect(shareOfPercent(' 12,5 % ')).toBe('0.125');
    expect(shareOfPercent('100.000000')).toBe('1');
    for (const bad of ['', '101', '100.1', '-5', '1e1', 'half', '0.1234567'])
      expect(shareOfPercent(bad)).toBeUndefined();
  });

  it('says of a recorded train that is not due after the window', () => {
    const a = account({
      ...base,
      trainActuals: [{ train: 'T99', passedAt: window.end, claimedBy: 'north' }],
    });
    expect(a.notes.join()).toContain('T99');
  });

  it('takes a time sheet before the standing row, with the factors of its own clock', () => {
    const a = account({
      ...base,
      prices: aBook({
        standing: { factors: [{ name: 'night', factor: '2', from: '22:00', to: '06:00' }] },
      }),
      standingActuals: [
        {
          resource: 'gang',
          amount: 3,
          start: window.end,
          end: at('2027-05-13 06:30'),
          claimedBy: 'plant contractor',
          evidence: 'time sheet 8',
        },
      ],
    });
    // 3 x (60 x 2 + 30) min at 60 an hour.
    expect(a.rows.filter((r) => r.head === 'standing')).toHaveLength(1);
    expect(row(a, 'standing-gang')).toMatchObject({
      amount: '450.00',
      basis: 'recorded',
      evidenced: true,
    });
  });

  it('takes an invoice before the row of the same code, and adds one of a new code', () => {
    const charge = { head: 'fixed' as const, title: 'Buses', claimedBy: 'bus firm' };
    const a = account({
      ...base,
      chargeActuals: [
        { ...charge, code: 'buses', amount: '612.40', evidence: 'invoice 31' },
        { ...charge, code: 'taxis', amount: '80' },
      ],
    });
    expect(a.rows.filter((r) => r.head === 'fixed').map((r) => [r.code, r.amount])).toEqual([
      ['buses', '612.40'],
      ['taxis', '80.00'],
    ]);
  });

  it('does not charge a train twice for minutes lost to a restriction that its record holds', () => {
    const restricted = {
      ...base,
      prices: aBook({
        delay: { by: 'train', rate: '10' },
        restriction: { minutesLostPerTrain: '2', liftedAfterMinutes: 60 },
      }),
    };
    expect(row(account(restricted), 'restriction')!.amount).toBe('80.00');
    const a = account({
      ...restricted,
      trainActuals: [{ train: 'T1', passedAt: window.end + 32 * MINUTE, claimedBy: 'north' }],
    });
    expect(row(a, 'restriction')!.amount).toBe('60.00');
  });

  it('adds up by claimant, evidence and head, beside the forecast', () => {
    const forecast = overrunCost({ ...base, overrunMinutes: 20 });
    const a = account({
      ...base,
      forecast,
      claims: { buses: { claimedBy: 'bus firm', evidence: 'invoice 31' } },
    });
    expect(a.total).toBe('1080.00');
    expect(a.claimants).toEqual([
      { claimedBy: '', amount: '580.00' },
      { claimedBy: 'bus firm', amount: '500.00' },
    ]);
    expect([a.evidenced, a.notEvidenced, a.notCounted]).toEqual(['500.00', '580.00', '210.00']);
    expect(a.heads).toEqual([
      { head: 'operator-delay', amount: '550.00', forecast: '300.00' },
      { head: 'standing', amount: '30.00', forecast: '20.00' },
      { head: 'fixed', amount: '500.00', forecast: '0.00' },
    ]);
  });

  it('agrees with the price of the same overrun where nothing else is recorded', () => {
    expect(account(base).total).toBe(overrunCost({ ...base, overrunMinutes: 30 }).total);
  });

  it('is nothing but what was recorded after an early handback', () => {
    const a = account({ ...base, actualHandback: window.end - 10 * MINUTE });
    expect([a.overrunMinutes, a.total]).toEqual([0, '0.00']);
  });
});

describe('claims on trains whose time is not recorded', () => {
  it('are taken by the code of the row, and give way to those of a recorded time', () => {
    const claims = { 'train-T1': { claimedBy: 'Operator', evidence: 'letter 4' } };
    const of = (a: ReturnType<typeof account>) => a.rows.find((row) => row.code === 'train-T1')!;
    expect(of(account({ ...base, claims }))).toMatchObject({
      basis: 'worked out',
      claimedBy: 'Operator',
      evidenced: true,
    });
    const trainActuals = [{ train: 'T1', passedAt: null, claimedBy: 'Another' }];
    expect(of(account({ ...base, claims, trainActuals }))).toMatchObject({
      basis: 'recorded',
      claimedBy: 'Another',
      evidenced: false,
    });
  });
});
