import { describe, expect, it } from 'vitest';
import { noRules } from '../../../src/model/index.js';
import { ledgerOf } from '../../../src/rules/index.js';
import { isolationTimes } from '../../../src/rules/isolation.js';
import {
  aRuleSet,
  aWindow,
  between,
  giveUp,
  isolate,
  lift,
  needs,
  protection,
  shown,
  worksite,
} from './ledger-build.js';

describe('an isolation with times of its own', () => {
  const rules = aRuleSet({
    leadIn: [protection, isolate, worksite],
    leadOut: [{ step: 'Clear', minutes: 20 }, giveUp, lift],
    margin: { minutes: 30 },
  });
  const window = aWindow({
    isolation: [
      { section: 'S1', during: [between('2027-05-02 00:40', '2027-05-02 06:30')] },
      { section: 'S2', during: [between('2027-05-02 00:10', '2027-05-02 05:10')] },
      { section: 'S3' },
    ],
  });

  it('holds its steps back until the latest needed section may be dead', () => {
    expect(shown(ledgerOf(window, needs(['S1', 'S3']), rules)).slice(0, 4)).toEqual([
      '23:00-23:30 lead-in Place protection',
      '23:30-00:40 lead-in Wait for isolation of S1 from 00:40',
      '00:40-01:25 lead-in Isolate',
      '01:25-01:45 lead-in Set up worksite',
    ]);
  });

  it('has its last step over when the earliest needed section is given back', () => {
    const ledger = ledgerOf(window, needs(['S1', 'S2']), rules);
    expect(shown(ledger).slice(-6)).toEqual([
      '01:45-04:20 usable Usable',
      '04:20-04:40 lead-out Clear',
      '04:40-05:10 lead-out Give up isolation',
      '05:10-05:25 lead-out Lift protection',
      '05:25-06:30 lead-out Isolation of S2 given up',
      '06:30-07:00 margin Required handback margin',
    ]);
    expect(ledger.rows.at(-2)?.why).toContain('05:10');
  });

  it('costs nothing where it ends later than the lead-out needs it', () => {
    const booked = ledgerOf(window, needs(['S1']), rules);
    const always = ledgerOf(window, needs(['S3']), rules);
    expect(shown(booked).slice(-4)).toEqual(shown(always).slice(-4));
  });

  it('does not touch work that needs none of its sections', () => {
    expect(ledgerOf(window, needs(), rules).usableMinutes).toBe(480 - 50 - 35 - 30);
  });

  it('bounds the work even where the rule set has no isolation steps', () => {
    const ledger = ledgerOf(window, needs(['S1']), noRules);
    expect(ledger.usable).toEqual([between('2027-05-02 00:40', '2027-05-02 06:30')]);
    expect(shown(ledger)).toEqual([
      '23:00-00:40 lead-in Wait for isolation of S1 from 00:40',
      '00:40-06:30 usable Usable',
      '06:30-07:00 lead-out Isolation of S1 given up',
    ]);
  });

  it('names the sections that are not booked, and when all that are may be dead', () => {
    const found = isolationTimes(window, needs(['S1', 'S2', 'S3', 'S9']));
    expect(found.dead).toEqual([between('2027-05-02 00:40', '2027-05-02 05:10')]);
    expect(found.timed.map((item) => item.section)).toEqual(['S1', 'S2']);
    expect(found.notBooked).toEqual(['S9']);
  });

  it('waited for while other steps run keeps rows one after another', () => {
    const held = aRuleSet({
      leadIn: [
        { step: 'Long set-up', minutes: 120 },
        { ...worksite, when: 'isolation', alongside: 'Long set-up' },
      ],
    });
    const ledger = ledgerOf(window, needs(['S2']), held);
    expect(shown(ledger).slice(0, 3)).toEqual([
      '23:00-01:00 lead-in Long set-up',
      '01:00-01:00 lead-in Set up worksite',
      '01:00-05:10 usable Usable',
    ]);
    expect(ledger.rows[1]?.why).toContain('00:10 to 00:30');
  });

  it('leaves nothing when the sections are never dead together', () => {
    const apart = aWindow({
      isolation: [
        { section: 'S1', during: [between('2027-05-01 23:00', '2027-05-02 01:00')] },
        { section: 'S2', during: [between('2027-05-02 03:00', '2027-05-02 06:00')] },
      ],
    });
    const ledger = ledgerOf(apart, needs(['S1', 'S2']), noRules);
    expect(ledger).toMatchObject({ usableMinutes: 0, shortfallMinutes: 120 });
    expect(ledger.rows.reduce((sum, row) => sum + row.minutes, 0)).toBe(480);
  });

  it('is named with its date in a window longer than a day', () => {
    const long = aWindow(
      { isolation: [{ section: 'S1', during: [between('2027-05-02 00:40', '2027-05-03 01:00')] }] },
      '2027-05-01 23:00',
      '2027-05-03 05:00',
    );
    expect(ledgerOf(long, needs(['S1']), noRules).rows[0]?.rule).toBe(
      'Wait for isolation of S1 from 2027-05-02 00:40',
    );
  });
});
