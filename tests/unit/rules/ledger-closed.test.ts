import { describe, expect, it } from 'vitest';
import { ordinaryNeeds } from '../../../src/model/index.js';
import { ledgerOf } from '../../../src/rules/index.js';
import { aRuleSet, aWindow, at, needs, protection, shown } from './ledger-build.js';

describe('a curfew', () => {
  const houses = { name: 'By the houses', from: '23:00', to: '01:00' };

  it('stops loud work and leaves other work alone', () => {
    const rules = aRuleSet({ curfews: [houses] });
    expect(shown(ledgerOf(aWindow(), needs([], true), rules))).toEqual([
      '23:00-01:00 curfew By the houses',
      '01:00-07:00 usable Usable',
    ]);
    expect(ledgerOf(aWindow(), needs(), rules).usableMinutes).toBe(480);
  });

  it('that bars all work stops all work', () => {
    const rules = aRuleSet({ curfews: [{ ...houses, bars: 'all' }] });
    expect(ledgerOf(aWindow(), needs(), rules).usableMinutes).toBe(360);
  });

  it('takes usable minutes only, and is not called too short for it', () => {
    const rules = aRuleSet({
      leadIn: [protection],
      curfews: [{ name: 'Night', bars: 'all', from: '22:00', to: '00:00' }],
    });
    const ledger = ledgerOf(aWindow(), needs(), rules);
    expect(shown(ledger)).toEqual([
      '23:00-23:30 lead-in Place protection',
      '23:30-00:00 curfew Night',
      '00:00-07:00 usable Usable',
    ]);
    expect(ledger.rows[1]?.why).not.toContain('too short');
  });

  it.each([
    ['sat', 360],
    ['sun', 480],
    ['fri', 480],
  ])('on %s alone counts by the day it starts on', (day, minutes) => {
    // The window runs from Saturday 23:00 to Sunday 07:00.
    const rules = aRuleSet({ curfews: [{ ...houses, days: [day] }] });
    expect(ledgerOf(aWindow(), needs([], true), rules).usableMinutes).toBe(minutes);
  });

  it('that began the evening before the window counts', () => {
    const rules = aRuleSet({
      curfews: [{ name: 'Night', from: '20:00', to: '03:00', days: ['sat'] }],
    });
    const window = aWindow({}, '2027-05-02 01:00', '2027-05-02 07:00');
    expect(ledgerOf(window, needs([], true), rules).usableMinutes).toBe(240);
  });

  it('may end at 24:00', () => {
    const rules = aRuleSet({ curfews: [{ name: 'Evening', from: '20:00', to: '24:00' }] });
    expect(ledgerOf(aWindow(), needs([], true), rules).usableMinutes).toBe(420);
  });

  it('that overlaps another is counted once, for the first of them', () => {
    const rules = aRuleSet({
      curfews: [houses, { name: 'By the school', from: '00:00', to: '02:00' }],
    });
    expect(shown(ledgerOf(aWindow(), needs([], true), rules))).toEqual([
      '23:00-01:00 curfew By the houses',
      '01:00-02:00 curfew By the school',
      '02:00-07:00 usable Usable',
    ]);
  });

  // Summer Time Order 2002 (SI 2002/262): 28 March and 31 October 2027.
  it.each([
    ['2027-03-27 23:00', '2027-03-28 07:00', 420, 240],
    ['2027-10-30 23:00', '2027-10-31 07:00', 540, 240],
  ])('over a clock change from %s is read from the clocks', (start, end, gross, usable) => {
    const rules = aRuleSet({ curfews: [{ name: 'Night', from: '22:00', to: '03:00' }] });
    const ledger = ledgerOf(aWindow({}, start, end), needs([], true), rules);
    expect(ledger).toMatchObject({ grossMinutes: gross, usableMinutes: usable });
  });
});

describe('shift changeovers', () => {
  const rules = aRuleSet({ shifts: { longestMinutes: 600, changeoverMinutes: 30 } });
  const hours = (count: number): ReturnType<typeof ledgerOf> =>
    ledgerOf(aWindow({ end: at('2027-05-01 23:00') + count * 3_600_000 }), ordinaryNeeds, rules);

  it('are not in a window of one shift', () => {
    expect(hours(10).usableMinutes).toBe(600);
  });

  it('take the end of every full shift of a longer one', () => {
    expect(shown(hours(24))).toEqual([
      '23:00-08:30 usable Usable',
      '08:30-09:00 shift-break Shift changeover',
      '09:00-18:30 usable Usable',
      '18:30-19:00 shift-break Shift changeover',
      '19:00-23:00 usable Usable',
    ]);
    expect(hours(20).usableMinutes).toBe(20 * 60 - 30);
  });

  it('inside a curfew take nothing more', () => {
    const both = aRuleSet({
      shifts: { longestMinutes: 600, changeoverMinutes: 30 },
      curfews: [{ name: 'Morning', bars: 'all', from: '08:00', to: '10:00' }],
    });
    const window = aWindow({ end: at('2027-05-02 15:00') });
    expect(shown(ledgerOf(window, ordinaryNeeds, both))).toEqual([
      '23:00-08:00 usable Usable',
      '08:00-10:00 curfew Morning',
      '10:00-15:00 usable Usable',
    ]);
  });
});
