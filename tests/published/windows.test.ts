import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HOUR, isoText, MINUTE } from '../../src/calendar/index.js';
import {
  noRules,
  ordinaryNeeds,
  ruleSetSchema,
  type AccessWindow,
  type RuleSet,
} from '../../src/model/index.js';
import { ledgerOf } from '../../src/rules/index.js';
import { at, zone } from '../helpers/clock.js';

const window = (date: string, from: string, to: string): AccessWindow => ({
  id: 'W',
  title: '',
  start: at(`${date} ${from}`, 'reject'),
  end: at(`${date} ${to}`, 'reject'),
  zone,
  lines: [],
  isolation: [],
  status: 'confirmed',
  trainsAfter: '',
});
const sample = (name: string): RuleSet =>
  ruleSetSchema.parse(
    JSON.parse(
      readFileSync(new URL(`../../sample-csv/rules/${name}.json`, import.meta.url), 'utf8'),
    ),
  );

describe('windows as published', () => {
  // A newsgroup post of 2003 (read; an opinion): power off 01:00, ready 02:00, pack up 04:30, first train 05:30.
  it('leave two and a half hours of work in a metro night of four and a half, 56 in a hundred', () => {
    const ledger = ledgerOf(
      window('2027-05-05', '01:00', '05:30'),
      ordinaryNeeds,
      sample('metro-night'),
    );
    expect(ledger.grossMinutes).toBe(270);
    expect(ledger.usableMinutes).toBe(150);
    expect(
      ledger.usable.map((interval) => [
        isoText(interval.start, zone).slice(11, 16),
        isoText(interval.end, zone).slice(11, 16),
      ]),
    ).toEqual([['02:00', '04:30']]);
    expect(Math.round((100 * ledger.usableMinutes) / ledger.grossMinutes)).toBe(56);
    // The same post: a hundred hours of work take forty nights.
    expect((100 * HOUR) / (ledger.usableMinutes * MINUTE)).toBe(40);
  });

  // A forum post (read; an opinion): two hours to set up, two of work, two to clear.
  it('leave a third of a night of re-sleepering', () => {
    const rules = ruleSetSchema.parse({
      schema: 1,
      name: 'Night re-sleepering',
      leadIn: [{ step: 'Set up', minutes: 120 }],
      leadOut: [{ step: 'Clear', minutes: 120 }],
    });
    const ledger = ledgerOf(window('2027-05-05', '00:00', '06:00'), ordinaryNeeds, rules);
    expect(ledger.rows.map((row) => [row.kind, row.minutes])).toEqual([
      ['lead-in', 120],
      ['usable', 120],
      ['lead-out', 120],
    ]);
    expect(Math.round((100 * ledger.usableMinutes) / ledger.grossMinutes)).toBe(33);
  });

  it.each([
    // An infrastructure manager's media centre, 27 November 2018 (read).
    ['between the last and first trains of a weekday', '2027-05-05', '01:00', '04:30', 3.5],
    // A signal engineers' examination forum (read second-hand), both.
    ['on a Sunday that disrupts no train', '2027-05-02', '01:00', '06:30', 5.5],
    ['at midweek that disrupts no train', '2027-05-05', '01:00', '04:00', 3],
  ])('%s last %s %s to %s', (_, date, from, to, hours) => {
    expect(ledgerOf(window(date, from, to), ordinaryNeeds, noRules).grossMinutes).toBe(hours * 60);
  });

  // Trade press, 19 December 2018 (read): strapping a third rail by hand takes up to an hour.
  it('lose the hour of strapping a third rail to work that needs it, and not to other work', () => {
    const booked = { ...window('2027-05-05', '00:30', '05:00'), isolation: [{ section: 'T1' }] };
    const rules = ruleSetSchema.parse({
      schema: 1,
      name: 'Straps by hand',
      leadIn: [{ step: 'Strap', minutes: 60, when: 'isolation' }],
    });
    expect(ledgerOf(booked, ordinaryNeeds, rules).usableMinutes).toBe(270);
    expect(ledgerOf(booked, { isolation: ['T1'], loud: false }, rules).usableMinutes).toBe(210);
    const strap = sample('third-rail').leadIn.find((step) => step.when === 'isolation');
    expect(strap?.minutes).toBe(60);
  });

  // Worked out: four and a half hours of deductions in a Saturday-night slot of eight on the clock.
  it.each([
    ['2027-05-02', 3.5],
    ['2027-03-28', 2.5],
    ['2027-10-31', 4.5],
  ])(
    'with four and a half hours of deductions leave, on the night to Sunday %s, %f h',
    (sunday, hours) => {
      const rules = ruleSetSchema.parse({
        schema: 1,
        name: 'Four and a half hours',
        leadIn: [{ step: 'Before', minutes: 120 }],
        leadOut: [{ step: 'After', minutes: 105 }],
        margin: { minutes: 45 },
      });
      const night = window(sunday, '07:00', '07:00');
      const saturday = String(Number(sunday.slice(8)) - 1).padStart(2, '0');
      const evening = at(`${sunday.slice(0, 8)}${saturday} 23:00`, 'reject');
      expect(ledgerOf({ ...night, start: evening }, ordinaryNeeds, rules).usableMinutes).toBe(
        hours * 60,
      );
    },
  );
});

describe('the sample rule sets', () => {
  it.each(['electrified-two-track', 'third-rail', 'branch', 'metro-night'])(
    '%s says of every value that it is an example or where it comes from',
    (name) => {
      const rules = sample(name);
      const parts = [
        ...rules.leadIn,
        ...rules.leadOut,
        rules.margin,
        ...rules.curfews,
        ...(rules.shifts ? [rules.shifts] : []),
        rules,
      ];
      expect(parts.length).toBeGreaterThan(5);
      for (const part of parts) expect(part.source).toMatch(/example/i);
      // A step alongside another names one that is there.
      for (const steps of [rules.leadIn, rules.leadOut])
        for (const { alongside } of steps)
          if (alongside !== undefined) expect(steps.map((step) => step.step)).toContain(alongside);
    },
  );
});
