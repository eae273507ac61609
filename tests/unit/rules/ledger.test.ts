import { describe, expect, it } from 'vitest';
import { noRules, ordinaryNeeds } from '../../../src/model/index.js';
import { ledgerOf } from '../../../src/rules/index.js';
import { inJson } from '../../helpers/in-json.js';
import {
  aRuleSet,
  aWindow,
  at,
  isolate,
  lift,
  needs,
  protection,
  s1,
  shown,
  worksite,
} from './ledger-build.js';

describe('the ledger of a window', () => {
  it('is all usable where the rule set deducts nothing', () => {
    const ledger = ledgerOf(aWindow(), ordinaryNeeds, noRules);
    expect(shown(ledger)).toEqual(['23:00-07:00 usable Usable']);
    expect(ledger).toMatchObject({ window: 'W1', grossMinutes: 480, usableMinutes: 480 });
    expect(ledger).toMatchObject({ shortfallMinutes: 0, barred: [] });
  });

  it('runs lead-in forward from the start and lead-out back from the margin, which is last', () => {
    const rules = aRuleSet({
      leadIn: [protection, worksite],
      leadOut: [{ step: 'Inspect', minutes: 20 }, lift],
      margin: { minutes: 40 },
    });
    expect(shown(ledgerOf(aWindow(), ordinaryNeeds, rules))).toEqual([
      '23:00-23:30 lead-in Place protection',
      '23:30-23:50 lead-in Set up worksite',
      '23:50-05:45 usable Usable',
      '05:45-06:05 lead-out Inspect',
      '06:05-06:20 lead-out Lift protection',
      '06:20-07:00 margin Required handback margin',
    ]);
  });

  it('names the rule’s source in the reason', () => {
    const rules = aRuleSet({
      leadIn: [{ ...protection, source: 'local instruction 4' }],
      margin: { minutes: 30, source: 'local instruction 5' },
    });
    const whys = ledgerOf(aWindow(), ordinaryNeeds, rules).rows.map((row) => row.why);
    expect(whys[0]).toContain('local instruction 4');
    expect(whys[2]).toContain('local instruction 5');
  });

  it('applies isolation steps to work that needs an isolation, loud steps to loud work', () => {
    const rules = aRuleSet({
      leadIn: [protection, isolate, { step: 'Tell the neighbours', minutes: 10, when: 'loud' }],
    });
    const window = aWindow({ isolation: s1 });
    const usable = (of: ReturnType<typeof needs>): number =>
      ledgerOf(window, of, rules).usableMinutes;
    expect(usable(needs())).toBe(450);
    expect(usable(needs(['S1']))).toBe(405);
    expect(usable(needs([], true))).toBe(440);
    expect(usable(needs(['S1'], true))).toBe(395);
  });
});

describe('a window that takes no such work', () => {
  it('because a section is not isolated says so and has no usable minute, but sums to the gross', () => {
    const rules = aRuleSet({
      leadIn: [protection],
      margin: { minutes: 30 },
      curfews: [{ name: 'Night', bars: 'all', from: '01:00', to: '02:00' }],
    });
    const ledger = ledgerOf(aWindow({ isolation: s1 }), needs(['S1', 'S7', 'S8']), rules);
    expect(inJson(ledger.barred)).toEqual([
      { code: 'isolation-not-booked', text: 'The window does not isolate S7.' },
      { code: 'isolation-not-booked', text: 'The window does not isolate S8.' },
    ]);
    expect(ledger).toMatchObject({ usableMinutes: 0, usable: [] });
    expect(shown(ledger)).toEqual([
      '23:00-23:30 lead-in Place protection',
      '23:30-06:30 lead-in Isolation not booked',
      '06:30-07:00 margin Required handback margin',
    ]);
  });

  it('because it is withdrawn still shows the hours that are lost', () => {
    const ledger = ledgerOf(aWindow({ status: 'withdrawn' }), ordinaryNeeds, noRules);
    expect(ledger.barred.map((item) => item.code)).toEqual(['withdrawn']);
    expect(ledger.usableMinutes).toBe(480);
  });
});

describe('a window too short for its own deductions', () => {
  const rules = aRuleSet({
    leadIn: [protection, worksite],
    leadOut: [{ step: 'Clear', minutes: 20 }, lift],
    margin: { minutes: 25 },
  });
  const short = (minutes: number): ReturnType<typeof ledgerOf> =>
    ledgerOf(aWindow({ end: at('2027-05-01 23:00') + minutes * 60_000 }), ordinaryNeeds, rules);

  it('has exactly no usable time, and is not short, when they just fill it', () => {
    expect(short(110)).toMatchObject({ usableMinutes: 0, shortfallMinutes: 0 });
    expect(short(111)).toMatchObject({ usableMinutes: 1, shortfallMinutes: 0 });
    expect(short(109)).toMatchObject({ usableMinutes: 0, shortfallMinutes: 1 });
  });

  it('cuts the lead-in first and says what it needs and has', () => {
    const ledger = short(70);
    expect(shown(ledger)).toEqual([
      '23:00-23:10 lead-in Place protection',
      '23:10-23:10 lead-in Set up worksite',
      '23:10-23:30 lead-out Clear',
      '23:30-23:45 lead-out Lift protection',
      '23:45-00:10 margin Required handback margin',
    ]);
    expect(ledger.shortfallMinutes).toBe(40);
    expect(ledger.rows[0]?.why).toContain('Needs 30 min, has 10 min');
    expect(ledger.rows[1]?.why).toContain('Needs 20 min, has 0 min');
    expect(ledger.rows[2]?.why).not.toContain('Needs');
  });

  it('cuts the lead-out next, and the margin last', () => {
    const minutes = (ledger: ReturnType<typeof ledgerOf>): number[] =>
      ledger.rows.map((row) => row.minutes);
    expect(minutes(short(50))).toEqual([0, 0, 10, 15, 25]);
    expect(minutes(short(20))).toEqual([0, 0, 0, 0, 20]);
    expect(short(20).shortfallMinutes).toBe(90);
    expect(short(20).rows.at(-1)?.why).toContain('Needs 25 min, has 20 min');
  });
});

// Common practice, no source: a Saturday-night slot of eight hours on the clock, two of them deducted.
describe('a Saturday night with two hours of deductions', () => {
  const rules = aRuleSet({
    leadIn: [protection, worksite],
    leadOut: [{ step: 'Clear and inspect', minutes: 25 }, lift],
    margin: { minutes: 30 },
  });

  it.each([
    ['in May has six usable hours', '2027-05-01 23:00', '2027-05-02 07:00', 360],
    ['in March, when clocks go forward, has five', '2027-03-27 23:00', '2027-03-28 07:00', 300],
    ['in October, when clocks go back, has seven', '2027-10-30 23:00', '2027-10-31 07:00', 420],
  ])('%s', (_, start, end, usable) => {
    expect(ledgerOf(aWindow({}, start, end), ordinaryNeeds, rules).usableMinutes).toBe(usable);
  });
});
