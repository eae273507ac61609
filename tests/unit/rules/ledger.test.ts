import { describe, expect, it } from 'vitest';
import { noRules, ordinaryNeeds } from '../../../src/model/index.js';
import { ledgerOf } from '../../../src/rules/index.js';
import { isolationTimes } from '../../../src/rules/isolation.js';
import { aRuleSet, aWindow, at, between, needs, shown } from './ledger-build.js';

const protection = { step: 'Place protection', minutes: 30 };
const worksite = { step: 'Set up worksite', minutes: 20 };
const isolate = { step: 'Isolate', minutes: 45, when: 'isolation' };
const giveUp = { step: 'Give up isolation', minutes: 30, when: 'isolation' };
const lift = { step: 'Lift protection', minutes: 15 };
const s1 = [{ section: 'S1' }];

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
    const row = ledger.rows.find((one) => one.rule === 'Set up worksite');
    expect(row?.minutes).toBe(0);
    expect(row?.why).toContain('beside other steps');
  });

  it('keeps a row of 0 minutes that says why when it is wholly covered', () => {
    const ledger = ledgerOf(
      window,
      needs(['S1']),
      aRuleSet({ leadIn: [isolate, { ...worksite, alongside: 'Isolate' }] }),
    );
    const row = ledger.rows.find((one) => one.rule === 'Set up worksite');
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
    const row = ledger.rows.find((one) => one.rule === 'Isolate');
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

describe('an isolation with times of its own', () => {
  const rules = aRuleSet({
    leadIn: [protection, isolate, worksite],
    leadOut: [{ step: 'Clear', minutes: 20 }, giveUp, lift],
    margin: { minutes: 30 },
  });
  const window = aWindow({
    isolation: [
      { section: 'S1', during: between('2027-05-02 00:40', '2027-05-02 06:30') },
      { section: 'S2', during: between('2027-05-02 00:10', '2027-05-02 05:10') },
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

  it('names the sections that decide, and those that the window does not isolate', () => {
    expect(isolationTimes(window, needs(['S1', 'S2', 'S3', 'S9']))).toEqual({
      ...between('2027-05-02 00:40', '2027-05-02 05:10'),
      startLate: ['S1'],
      endEarly: ['S2'],
      notBooked: ['S9'],
    });
    const whole = [{ section: 'S1', during: between('2027-05-01 23:00', '2027-05-02 07:00') }];
    expect(isolationTimes(aWindow({ isolation: whole }), needs(['S1']))).toMatchObject({
      startLate: [],
      endEarly: [],
    });
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
        { section: 'S1', during: between('2027-05-01 23:00', '2027-05-02 01:00') },
        { section: 'S2', during: between('2027-05-02 03:00', '2027-05-02 06:00') },
      ],
    });
    const ledger = ledgerOf(apart, needs(['S1', 'S2']), noRules);
    expect(ledger).toMatchObject({ usableMinutes: 0, shortfallMinutes: 120 });
    expect(ledger.rows.reduce((sum, row) => sum + row.minutes, 0)).toBe(480);
  });

  it('is named with its date in a window longer than a day', () => {
    const long = aWindow(
      { isolation: [{ section: 'S1', during: between('2027-05-02 00:40', '2027-05-03 01:00') }] },
      '2027-05-01 23:00',
      '2027-05-03 05:00',
    );
    expect(ledgerOf(long, needs(['S1']), noRules).rows[0]?.rule).toBe(
      'Wait for isolation of S1 from 2027-05-02 00:40',
    );
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
    expect(ledger.barred).toEqual([
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
    expect(ledger.barred.map((one) => one.code)).toEqual(['withdrawn']);
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
