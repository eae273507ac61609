import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MINUTE, unionOf, type Instant } from '../../../src/calendar/index.js';
import {
  ruleSetSchema,
  weekdays,
  type AccessWindow,
  type Curfew,
  type Needs,
  type RuleSet,
  type Step,
} from '../../../src/model/index.js';
import { isolationTimes } from '../../../src/rules/isolation.js';
import { ledgerOf, usableTime, type Ledger } from '../../../src/rules/index.js';
import { cases } from '../../helpers/cases.js';

const sections = ['S1', 'S2', 'S3'];
const names = ['A', 'B', 'C', 'D', 'E'];
const clock = fc
  .integer({ min: 0, max: 24 * 4 })
  .map(
    (n) => `${String(Math.floor(n / 4)).padStart(2, '0')}:${String((n % 4) * 15).padStart(2, '0')}`,
  );
const when = fc.constantFrom('always' as const, 'isolation' as const, 'loud' as const);

const aStep: fc.Arbitrary<Step> = fc.record(
  {
    step: fc.constantFrom(...names),
    minutes: fc.integer({ min: 0, max: 90 }),
    when,
    alongside: fc.constantFrom(...names, 'Nothing'),
  },
  { requiredKeys: ['step', 'minutes', 'when'] },
);
const aCurfew: fc.Arbitrary<Curfew> = fc.record(
  {
    name: fc.constantFrom('Night', 'Morning'),
    bars: fc.constantFrom('loud' as const, 'all' as const),
    from: clock,
    to: clock,
    days: fc.uniqueArray(fc.constantFrom(...weekdays)),
  },
  { requiredKeys: ['name', 'bars', 'from', 'to'] },
);
const aRuleSet: fc.Arbitrary<RuleSet> = fc.record(
  {
    schema: fc.constant(1 as const),
    name: fc.constant('random'),
    leadIn: fc.array(aStep, { maxLength: 6 }),
    leadOut: fc.array(aStep, { maxLength: 6 }),
    margin: fc.record({ minutes: fc.integer({ min: 0, max: 120 }) }),
    curfews: fc.array(aCurfew, { maxLength: 3 }),
    shifts: fc.record({
      longestMinutes: fc.integer({ min: 30, max: 900 }),
      restMinutes: fc.constant(0),
      changeoverMinutes: fc.integer({ min: 0, max: 60 }),
    }),
  },
  { requiredKeys: ['schema', 'name', 'leadIn', 'leadOut', 'margin', 'curfews'] },
);

// Half of the starts lie near a clock change of 2027 in Europe/London.
const aStart = fc.oneof(
  fc.integer({ min: Date.UTC(2027, 0) / MINUTE, max: Date.UTC(2028, 0) / MINUTE }),
  fc
    .tuple(
      fc.constantFrom(Date.UTC(2027, 2, 28, 1), Date.UTC(2027, 9, 31, 1)),
      fc.integer({ min: -900, max: 300 }),
    )
    .map(([change, minutes]) => change / MINUTE + minutes),
);
const aWindow: fc.Arbitrary<AccessWindow> = fc
  .record({
    start: aStart,
    minutes: fc.oneof(fc.integer({ min: 1, max: 240 }), fc.integer({ min: 240, max: 4000 })),
    isolation: fc.uniqueArray(fc.constantFrom(...sections)),
    during: fc.array(
      fc.option(
        fc.oneof(
          fc.array(fc.tuple(fc.nat(1000), fc.nat(1000)), { minLength: 1, maxLength: 4 }),
          fc.record({ fromMinute: fc.nat(1440), toMinute: fc.nat(1440) }),
        ),
      ),
      { minLength: 3, maxLength: 3 },
    ),
    status: fc.constantFrom('confirmed' as const, 'withdrawn' as const),
  })
  .map(({ start, minutes, isolation, during, status }) => ({
    id: 'W',
    title: '',
    start: start * MINUTE,
    end: (start + minutes) * MINUTE,
    zone: 'Europe/London',
    lines: [],
    isolation: isolation.map((section, i) => {
      const times = during[i];
      if (!times) return { section };
      if (!Array.isArray(times)) return { section, during: [times] };
      const share = (n: number): Instant => (start + Math.floor((n / 1000) * minutes)) * MINUTE;
      const stretches = times.map(([a, b]) => ({
        start: share(Math.min(a, b)),
        end: share(Math.max(a, b)),
      }));
      return { section, during: stretches };
    }),
    status,
    trainsAfter: '',
  }));
const someNeeds: fc.Arbitrary<Needs> = fc.record({
  isolation: fc.uniqueArray(fc.constantFrom(...sections)),
  loud: fc.boolean(),
});
const aCase = fc.tuple(aWindow, someNeeds, aRuleSet);

/** The kinds of row that have each minute of the window, one by one: just one kind unless something is wrong. */
function byMinute(window: AccessWindow, ledger: Ledger): string[] {
  const minutes = new Array<string>((window.end - window.start) / MINUTE).fill('');
  for (const row of ledger.rows)
    for (let at = row.start; at < row.end; at += MINUTE) {
      const minute = (at - window.start) / MINUTE;
      minutes[minute] += row.kind;
    }
  return minutes;
}

describe('the ledger of any window under any rule set for any work', () => {
  it('is made of rule sets that could be read from a file', () => {
    fc.assert(
      fc.property(aRuleSet, (rules) => {
        expect(ruleSetSchema.parse(JSON.parse(JSON.stringify(rules)))).toEqual(rules);
      }),
      { numRuns: cases(200) },
    );
  });

  it('sums to the gross: every minute is in one row, rows follow one another without a gap', () => {
    fc.assert(
      fc.property(aCase, ([window, needs, rules]) => {
        const ledger = ledgerOf(window, needs, rules);
        const { rows } = ledger;
        const ends = rows.map((row) => row.end);
        expect([...rows.map((row) => row.start), window.end]).toEqual([window.start, ...ends]);
        expect(rows.map((row) => row.minutes)).toEqual(
          rows.map((row) => (row.end - row.start) / MINUTE),
        );
        expect(rows.filter((row) => row.end < row.start || row.why === '')).toEqual([]);
        expect(rows.reduce((sum, row) => sum + row.minutes, 0)).toBe(ledger.grossMinutes);
        expect(ledger.grossMinutes).toBe((window.end - window.start) / MINUTE);
      }),
      { numRuns: cases(2000) },
    );
  });

  it('has just the usable rows as its usable set', () => {
    fc.assert(
      fc.property(aCase, ([window, needs, rules]) => {
        const ledger = ledgerOf(window, needs, rules);
        const kinds = byMinute(window, ledger);
        const single = new Set([
          'lead-in',
          'usable',
          'curfew',
          'shift-break',
          'lead-out',
          'margin',
        ]);
        expect(kinds.filter((kind) => !single.has(kind))).toEqual([]);
        expect(ledger.usable).toEqual(unionOf(ledger.rows.filter((row) => row.kind === 'usable')));
        expect(ledger.usableMinutes).toBe(kinds.filter((kind) => kind === 'usable').length);
      }),
      { numRuns: cases(300) },
    );
  });

  it('is told the same usable time by the quick way, which makes no rows', () => {
    fc.assert(
      fc.property(aCase, ([window, needs, rules]) => {
        expect(usableTime(window, needs, rules)).toEqual(ledgerOf(window, needs, rules).usable);
      }),
      { numRuns: cases(3000) },
    );
  });

  it('goes lead-in, work, lead-out, margin; an isolation not booked leaves lead-in alone', () => {
    const phase = {
      'lead-in': 0,
      usable: 1,
      curfew: 1,
      'shift-break': 1,
      'lead-out': 2,
      margin: 3,
    };
    fc.assert(
      fc.property(aCase, ([window, needs, rules]) => {
        const ledger = ledgerOf(window, needs, rules);
        // Between two stretches in which sections are dead they are given up and isolated anew.
        if (isolationTimes(window, needs).dead.length > 1) return;
        const phases = ledger.rows.filter((row) => row.minutes > 0).map((row) => phase[row.kind]);
        expect(phases).toEqual([...phases].sort((a, b) => a - b));
        if (ledger.barred.some((item) => item.code === 'isolation-not-booked'))
          expect(phases).not.toContain(1);
      }),
      { numRuns: cases(1000) },
    );
  });

  it('is short by the minutes that a longer window would need, where no isolation has times of its own', () => {
    fc.assert(
      fc.property(aCase, ([timed, needs, rules]) => {
        const window = { ...timed, isolation: sections.map((section) => ({ section })) };
        const plain = { ...rules, curfews: [] };
        delete plain.shifts;
        const { shortfallMinutes, usableMinutes } = ledgerOf(window, needs, plain);
        if (shortfallMinutes > 0) expect(usableMinutes).toBe(0);
        const longer = (minutes: number): Ledger =>
          ledgerOf({ ...window, end: window.end + minutes * MINUTE }, needs, plain);
        if (shortfallMinutes > 0) {
          expect(longer(shortfallMinutes)).toMatchObject({ shortfallMinutes: 0, usableMinutes: 0 });
          expect(longer(shortfallMinutes + 1).usableMinutes).toBe(1);
        } else expect(longer(7).usableMinutes).toBe(usableMinutes + 7);
      }),
      { numRuns: cases(500) },
    );
  });

  it('never gains a usable minute from a step, a curfew or a minute of margin that is added', () => {
    // A new step with a name that no other names: one that gives others a partner may shorten the lead-in.
    const added = aStep.map((step) => ({ ...step, step: 'New' }));
    fc.assert(
      fc.property(
        aCase,
        added,
        aCurfew,
        fc.nat(6),
        ([window, needs, rules], step, curfew, index) => {
          const inserted = (steps: readonly Step[]): Step[] => [
            ...steps.slice(0, index),
            step,
            ...steps.slice(index),
          ];
          const before = ledgerOf(window, needs, rules);
          for (const more of [
            { ...rules, leadIn: inserted(rules.leadIn) },
            { ...rules, leadOut: inserted(rules.leadOut) },
            { ...rules, curfews: [...rules.curfews, curfew] },
            { ...rules, margin: { minutes: rules.margin.minutes + 1 } },
          ]) {
            const after = ledgerOf(window, needs, more);
            expect(after.usableMinutes).toBeLessThanOrEqual(before.usableMinutes);
            // Not only fewer: none that was not usable before.
            expect(unionOf([...before.usable, ...after.usable])).toEqual(before.usable);
          }
        },
      ),
      { numRuns: cases(1000) },
    );
  });

  it('never gains a usable minute from work that is loud or needs one more section', () => {
    fc.assert(
      fc.property(aCase, fc.constantFrom(...sections), ([window, needs, plain], section) => {
        // Steps in series: a partner that comes to apply may take a step out of the series.
        const series = (steps: readonly Step[]): Step[] =>
          steps.map(({ step, minutes, when: condition }) => ({ step, minutes, when: condition }));
        const rules = { ...plain, leadIn: series(plain.leadIn), leadOut: series(plain.leadOut) };
        const before = ledgerOf(window, needs, rules).usable;
        for (const more of [
          { ...needs, loud: true },
          { ...needs, isolation: [...new Set([...needs.isolation, section])] },
        ])
          expect(unionOf([...before, ...ledgerOf(window, more, rules).usable])).toEqual(before);
      }),
      { numRuns: cases(500) },
    );
  });

  it('does not depend on the order in which needs or sections are given', () => {
    fc.assert(
      fc.property(aCase, ([window, needs, rules]) => {
        const turned = ledgerOf(
          { ...window, isolation: [...window.isolation].reverse() },
          { ...needs, isolation: [...needs.isolation].reverse() },
          rules,
        );
        expect(turned.usable).toEqual(ledgerOf(window, needs, rules).usable);
      }),
      { numRuns: cases(300) },
    );
  });
});
