import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MINUTE, type Instant } from '../../../src/calendar/index.js';
import {
  ruleSetSchema,
  weekdays,
  type AccessWindow,
  type Needs,
  type RuleSet,
  type Step,
} from '../../../src/model/index.js';
import { ledgerOf } from '../../../src/rules/index.js';

// Clocks do not change here, and are 5 h 45 ahead of UTC.
const zone = 'Asia/Kathmandu';
const AHEAD = 345;

/**
 * Usable minutes found by walking through the night a minute at a time, with steps in series. Shares nothing with the
 * ledger: no intervals, no time library.
 */
function usableByWalking(window: AccessWindow, needs: Needs, rules: RuleSet): Instant[] {
  const takes = ({ when }: Step): boolean =>
    when === 'always' || (when === 'loud' ? needs.loud : needs.isolation.length > 0);
  const dead = (at: Instant): boolean =>
    needs.isolation.every((section) => {
      const booked = window.isolation.find((one) => one.section === section);
      return booked && (!booked.during || (booked.during.start <= at && at < booked.during.end));
    });
  if (needs.isolation.some((section) => !window.isolation.some((one) => one.section === section)))
    return [];

  let first = window.start;
  const waitUntilDead = (): void => {
    while (first < window.end && !dead(first)) first += MINUTE;
  };
  for (const step of rules.leadIn.filter(takes)) {
    if (step.when === 'isolation') waitUntilDead();
    for (let left = step.minutes; left > 0; left -= 1) first += MINUTE;
  }
  waitUntilDead();

  // From the end: margin, then the steps last first; one that gives up an isolation ends at the last dead minute.
  let last = window.end - rules.margin.minutes * MINUTE;
  const backUntilDead = (): void => {
    while (last > window.start && !dead(last - MINUTE)) last -= MINUTE;
  };
  for (const step of rules.leadOut.filter(takes).reverse()) {
    if (step.when === 'isolation') backUntilDead();
    for (let left = step.minutes; left > 0; left -= 1) last -= MINUTE;
  }
  backUntilDead();

  const stopped = (at: Instant): boolean => {
    const local = at / MINUTE + AHEAD;
    const minute = local % 1440;
    // 1970-01-01 was a Thursday, the fourth of the list.
    const today = weekdays[(Math.floor(local / 1440) + 3) % 7]!;
    const yesterday = weekdays[(Math.floor(local / 1440) + 2) % 7]!;
    const number = (clock: string): number =>
      Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
    const curfew = rules.curfews.some(({ bars, from, to, days }) => {
      if (bars === 'loud' && !needs.loud) return false;
      const starts = (day: (typeof weekdays)[number]): boolean => !days || days.includes(day);
      if (number(from) < number(to))
        return starts(today) && number(from) <= minute && minute < number(to);
      return (
        (starts(today) && number(from) <= minute) || (starts(yesterday) && minute < number(to))
      );
    });
    if (curfew || !rules.shifts) return curfew;
    const { longestMinutes, changeoverMinutes } = rules.shifts;
    const gone = (at - window.start) / MINUTE;
    const shiftEnd =
      window.start + (Math.floor(gone / longestMinutes) + 1) * longestMinutes * MINUTE;
    return shiftEnd < window.end && at >= shiftEnd - changeoverMinutes * MINUTE;
  };
  const usable: Instant[] = [];
  for (let at = first; at < last; at += MINUTE) if (!stopped(at)) usable.push(at);
  return usable;
}

const clock = fc
  .integer({ min: 0, max: 1439 })
  .map((n) => `${String(Math.floor(n / 60)).padStart(2, '0')}:${String(n % 60).padStart(2, '0')}`);
const steps = fc.array(
  fc.record({
    step: fc.constantFrom('A', 'B', 'C'),
    minutes: fc.nat(60),
    when: fc.constantFrom('always', 'isolation', 'loud'),
  }),
  { maxLength: 5 },
);
const ruleSets = fc
  .record(
    {
      leadIn: steps,
      leadOut: steps,
      margin: fc.record({ minutes: fc.nat(60) }),
      curfews: fc.array(
        fc.record(
          {
            name: fc.constant('Night'),
            bars: fc.constantFrom('loud', 'all'),
            from: clock,
            to: clock,
            days: fc.uniqueArray(fc.constantFrom(...weekdays)),
          },
          { requiredKeys: ['name', 'from', 'to'] },
        ),
        { maxLength: 2 },
      ),
      shifts: fc
        .tuple(fc.integer({ min: 120, max: 900 }), fc.nat(60))
        .map(([longestMinutes, changeoverMinutes]) => ({ longestMinutes, changeoverMinutes })),
    },
    { requiredKeys: ['leadIn', 'leadOut', 'margin', 'curfews'] },
  )
  .map((rules) => ruleSetSchema.parse({ schema: 1, name: 'random', ...rules }));

describe('the usable minutes of a ledger', () => {
  it('are those found by walking through the window a minute at a time', () => {
    let some = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 29_000_000, max: 30_000_000 }),
        fc.integer({ min: 60, max: 3000 }),
        fc.uniqueArray(fc.constantFrom('S1', 'S2'), { maxLength: 2 }),
        fc.boolean(),
        fc.array(fc.option(fc.tuple(fc.nat(40), fc.integer({ min: 60, max: 100 }))), {
          minLength: 2,
          maxLength: 2,
        }),
        fc.integer({ min: 1, max: 2 }),
        ruleSets,
        (start, minutes, isolation, loud, during, booked, rules) => {
          const share = (n: number): Instant => (start + Math.floor((minutes * n) / 100)) * MINUTE;
          const window: AccessWindow = {
            id: 'W',
            title: '',
            start: share(0),
            end: share(100),
            zone,
            lines: [],
            isolation: ['S1', 'S2'].slice(0, booked).map((section, i) => {
              const times = during[i];
              return times
                ? { section, during: { start: share(times[0]), end: share(times[1]) } }
                : { section };
            }),
            status: 'confirmed',
            trainsAfter: '',
          };
          const needs = { isolation, loud };
          const found = ledgerOf(window, needs, rules).usable.flatMap((one) =>
            Array.from(
              { length: (one.end - one.start) / MINUTE },
              (_, i) => one.start + i * MINUTE,
            ),
          );
          expect(found).toEqual(usableByWalking(window, needs, rules));
          if (found.length > 0) some += 1;
        },
      ),
      { numRuns: 500 },
    );
    expect(some).toBeGreaterThan(200);
  });
});
