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
import { cases } from '../../helpers/cases.js';

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
  const clockAt = (at: Instant): number => (((at / MINUTE + AHEAD) % 1440) + 1440) % 1440;
  const dead = (at: Instant): boolean =>
    needs.isolation.every(
      (section) =>
        window.isolation
          .find((item) => item.section === section)!
          .during?.some((item) => {
            if ('start' in item) return item.start <= at && at < item.end;
            const now = clockAt(at);
            return item.fromMinute < item.toMinute
              ? item.fromMinute <= now && now < item.toMinute
              : item.fromMinute <= now || now < item.toMinute;
          }) !== false,
    );
  if (needs.isolation.some((section) => !window.isolation.some((item) => item.section === section)))
    return [];

  // Runs of dead minutes: first and last minute of each.
  const runs: [Instant, Instant][] = [];
  for (let at = window.start; at < window.end; at += MINUTE)
    if (dead(at)) {
      if (runs.at(-1)?.[1] === at - MINUTE) runs.at(-1)![1] = at;
      else runs.push([at, at]);
    }
  const [into, out] = [rules.leadIn, rules.leadOut].map((steps) =>
    steps.filter((step) => takes(step) && step.when === 'isolation'),
  ) as [Step[], Step[]];
  const sum = (steps: readonly Step[]): number => steps.reduce((n, step) => n + step.minutes, 0);
  const last = window.end - rules.margin.minutes * MINUTE;

  // When work can begin if the sections are isolated in a run, and when it must be over if they are given up in it.
  const readyIn = ([first]: readonly [Instant, Instant]): Instant => {
    let at = window.start;
    for (const step of rules.leadIn.filter(takes)) {
      if (step.when === 'isolation') at = Math.max(at, first);
      at += step.minutes * MINUTE;
    }
    return Math.max(at, first);
  };
  const clearIn = ([, end]: readonly [Instant, Instant]): Instant => {
    let at = last;
    for (const step of rules.leadOut.filter(takes).reverse()) {
      if (step.when === 'isolation') at = Math.min(at, end + MINUTE);
      at -= step.minutes * MINUTE;
    }
    return Math.min(at, end + MINUTE);
  };
  const free = new Set<Instant>();
  const several = runs.length > 1;
  const enters = runs.find((run) => !several || readyIn(run) + sum(out) * MINUTE <= run[1]);
  const leaves = runs.findLast((run) => !several || clearIn(run) > run[0] + sum(into) * MINUTE);
  if (enters && leaves && enters[0] <= leaves[0])
    for (const run of runs) {
      if (run[0] < enters[0] || run[0] > leaves[0]) continue;
      const from = run === enters ? readyIn(run) : run[0] + sum(into) * MINUTE;
      const to = run === leaves ? clearIn(run) : run[1] + MINUTE - sum(out) * MINUTE;
      for (let at = from; at < to; at += MINUTE) free.add(at);
    }

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
  for (let at = window.start; at < last; at += MINUTE)
    if (free.has(at) && !stopped(at)) usable.push(at);
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
        fc.integer({ min: 60, max: 6000 }),
        fc.uniqueArray(fc.constantFrom('S1', 'S2'), { maxLength: 2 }),
        fc.boolean(),
        fc.array(
          fc.option(
            fc.oneof(
              fc.tuple(fc.nat(40), fc.integer({ min: 60, max: 100 })).map((item) => [item]),
              fc.uniqueArray(fc.nat(100), { minLength: 4, maxLength: 8 }).map((all) => {
                const edges = all.toSorted((a, b) => a - b);
                return edges.flatMap((from, k) =>
                  k % 2 === 0 ? [[from, edges[k + 1] ?? 100]] : [],
                );
              }),
              fc.record({ fromMinute: fc.nat(1439), toMinute: fc.nat(1439) }),
            ),
          ),
          { minLength: 2, maxLength: 2 },
        ),
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
              if (!times) return { section };
              return {
                section,
                during: Array.isArray(times)
                  ? times.map(([from, to]) => ({ start: share(from), end: share(to) }))
                  : [times],
              };
            }),
            status: 'confirmed',
            trainsAfter: '',
          };
          const needs = { isolation, loud };
          const found = ledgerOf(window, needs, rules).usable.flatMap((interval) =>
            Array.from(
              { length: (interval.end - interval.start) / MINUTE },
              (_, i) => interval.start + i * MINUTE,
            ),
          );
          expect(found).toEqual(usableByWalking(window, needs, rules));
          if (found.length > 0) some += 1;
        },
      ),
      { numRuns: cases(500) },
    );
    expect(some).toBeGreaterThan(cases(200));
  });
});
