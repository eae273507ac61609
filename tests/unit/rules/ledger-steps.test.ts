import { describe, expect, it } from 'vitest';
import { ledgerOf } from '../../../src/rules/index.js';
import {
  aRuleSet,
  aWindow,
  isolate,
  needs,
  protection,
  s1,
  shown,
  worksite,
} from './ledger-build.js';

describe('a step alongside another', () => {
  const window = aWindow({ isolation: s1 });
  const lead = (...leadIn: unknown[]): string[] =>
    shown(ledgerOf(window, needs(['S1']), aRuleSet({ leadIn }))).slice(0, -1);

  it('starts with it, and only what sticks out is deducted', () => {
    expect(lead(protection, worksite, { ...isolate, alongside: 'Set up worksite' })).toEqual([
      '23:00-23:30 lead-in Place protection',
      '23:30-23:50 lead-in Set up worksite',
      '23:50-00:15 lead-in Isolate',
    ]);
  });

  it('may be listed before it, and then owns the time they share', () => {
    const rules = aRuleSet({
      leadIn: [protection, { ...isolate, alongside: 'Set up worksite' }, worksite],
    });
    const ledger = ledgerOf(window, needs(['S1']), rules);
    expect(shown(ledger).slice(0, -1)).toEqual([
      '23:00-23:30 lead-in Place protection',
      '23:30-23:30 lead-in Set up worksite',
      '23:30-00:15 lead-in Isolate',
    ]);
    const row = ledger.rows.find((item) => item.rule === 'Set up worksite');
    expect(row?.minutes).toBe(0);
    expect(row?.why).toContain('beside other steps');
  });

  it('keeps a row of 0 minutes that says why when it is wholly covered', () => {
    const ledger = ledgerOf(
      window,
      needs(['S1']),
      aRuleSet({ leadIn: [isolate, { ...worksite, alongside: 'Isolate' }] }),
    );
    const row = ledger.rows.find((item) => item.rule === 'Set up worksite');
    expect(row).toMatchObject({ minutes: 0, kind: 'lead-in' });
    expect(row?.why).toMatch(/Alongside “Isolate”, 23:00 to 23:20\. All of it runs beside/);
    expect(ledger.usableMinutes).toBe(435);
  });

  it('says how much of it is shared when it is covered in part', () => {
    const ledger = ledgerOf(
      window,
      needs(['S1']),
      aRuleSet({ leadIn: [worksite, { ...isolate, alongside: 'Set up worksite' }] }),
    );
    const row = ledger.rows.find((item) => item.rule === 'Isolate');
    expect(row?.minutes).toBe(25);
    expect(row?.why).toContain('20 min of it runs beside other steps');
  });

  it('goes in series when the other is not there or does not apply', () => {
    const series = ['23:00-23:30 lead-in Place protection', '23:30-23:50 lead-in Set up worksite'];
    expect(lead(protection, { ...worksite, alongside: 'Nothing of the kind' })).toEqual(series);
    const rules = aRuleSet({
      leadIn: [protection, isolate, { ...worksite, alongside: 'Isolate' }],
    });
    const ledger = ledgerOf(window, needs(), rules);
    expect(shown(ledger).slice(0, -1)).toEqual(series);
    expect(ledger.rows[1]?.why).toContain('“Isolate” does not apply here');
  });

  it('goes in series when it names itself', () => {
    expect(lead({ ...protection, alongside: 'Place protection' }, worksite)).toHaveLength(2);
  });

  it('shares its time with the other when each names the other', () => {
    const partner = { ...worksite, alongside: 'Place protection' };
    expect(lead({ ...protection, alongside: 'Set up worksite' }, partner)).toEqual([
      '23:00-23:00 lead-in Set up worksite',
      '23:00-23:30 lead-in Place protection',
    ]);
  });

  it('holds up what comes after both of them until the longer one has ended', () => {
    expect(
      lead({ ...isolate, alongside: 'Set up worksite' }, worksite, {
        step: 'Brief',
        minutes: 10,
      }).at(-1),
    ).toBe('23:45-23:55 lead-in Brief');
  });

  it('chains: with a step that is itself alongside a third', () => {
    const rules = aRuleSet({
      leadIn: [
        { step: 'A', minutes: 10, alongside: 'B' },
        { step: 'B', minutes: 20, alongside: 'C' },
        { step: 'C', minutes: 30 },
        { step: 'D', minutes: 5 },
      ],
    });
    expect(ledgerOf(window, needs(), rules).usableMinutes).toBe(480 - 35);
  });
});
