import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAY, HOUR, MINUTE } from '../../../src/calendar/index.js';
import {
  checkRoster,
  cured,
  limitSetSchema,
  type Assignment,
} from '../../../src/rules/people/index.js';
import { at, zone } from '../../helpers/clock.js';
import { broken, onDay, only, sample } from './roster-build.js';

describe('a roster', () => {
  it('is checked crew by crew', () => {
    const set = sample('safety-critical-rolling');
    expect(broken([onDay(0, 7, 720), onDay(0, 19, 720, { crew: 'B' })], set)).toEqual([]);
  });
  it('puts no crew in two places at once', () => {
    const breaches = checkRoster(
      [onDay(0, 7, 480), onDay(0, 14, 480)],
      only({ limit: 'longest-turn', minutes: 720 }),
      zone,
    ).breaches;
    expect(breaches).toMatchObject([
      { limit: 'overlap', found: 60, cure: { change: 'start later', minutes: 60 } },
    ]);
  });
  it('reports a turn that ends before it starts and checks the rest', () => {
    const result = checkRoster(
      [onDay(0, 7, -60), onDay(1, 7, 721)],
      only({ limit: 'longest-turn', minutes: 720 }),
      zone,
    );
    expect(result.faults.map((f) => [f.code, f.row])).toEqual([['turn-ends-before-start', 0]]);
    expect(result.breaches).toHaveLength(1);
    expect(result.caution).toContain('not a fatigue assessment');
  });

  /** Twelve weeks from 4 January, over the March change: four nights on, three off, seven weeks of days after. */
  function twelveWeeks(): Assignment[] {
    const roster: Assignment[] = [];
    let day = 0;
    for (let week = 0; week < 12; week += 1) {
      const nights = week < 5;
      for (let k = 0; k < (nights ? 4 : 5); k += 1) {
        day = week * 7 + k;
        const start = at('2027-01-04 00:00') + day * DAY + (nights ? 22 : 8) * HOUR;
        roster.push({
          id: `W${week + 1}.${k + 1}`,
          crew: 'A',
          start,
          end: start + 8 * HOUR,
          travelMinutes: 30,
        });
      }
    }
    return roster;
  }
  const set = limitSetSchema.parse({
    ...sample('safety-critical-rolling'),
    limits: [
      ...sample('safety-critical-rolling').limits,
      ...sample('gb-working-time').limits,
      ...sample('fatigue-factors').limits.filter((limit) => limit.limit !== 'nights-in-a-row'),
      {
        limit: 'nights-in-a-row',
        nights: 4,
        name: 'Four nights',
        source: 'this test',
        sureness: 'our own',
      },
    ],
  });
  it('of twelve clean weeks breaks nothing', () => {
    expect(checkRoster(twelveWeeks(), set, zone).breaches).toEqual([]);
  });
  it('of twelve weeks with planted breaches shows each of them and no other', () => {
    const roster = twelveWeeks();
    const change = (id: string, startBy: number, endBy: number) => {
      const i = roster.findIndex((assignment) => assignment.id === id);
      const assignment = roster[i]!;
      roster[i] = {
        ...assignment,
        start: assignment.start + startBy * MINUTE,
        end: assignment.end + endBy * MINUTE,
      };
    };
    change('W1.2', 0, 121); // night of 10 h 01: a minute over the night figure, rest after it 13 h 59
    change('W7.3', 0, 241); // day of 12 h 01, rest after it 11 h 59
    change('W9.2', -181, 0); // starts 04:59 and lasts 11 h 01
    // A fifth night in week 4, after four.
    roster.push(onDay(25, 22, 480, { id: 'extra night' }));
    const found = checkRoster(roster, set, zone).breaches.map((b) => [
      b.assignment,
      b.name,
      b.excess,
    ]);
    expect(found).toEqual([
      ['W1.2', 'Night turn', 1],
      ['W1.3', 'Rest between nights', 1],
      ['extra night', 'Four nights', 1],
      ['W7.3', 'Turn of duty', 1],
      ['W7.3', 'Day turn', 1],
      ['W7.4', 'Rest between turns', 1],
      ['W9.2', 'Early turn', 181],
    ]);
  });
});

const anyRoster = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 120, max: 2400 }),
      length: fc.integer({ min: 200, max: 900 }),
    }),
    {
      minLength: 3,
      maxLength: 15,
    },
  )
  .map((turns) => {
    let clock = at('2027-03-15 06:00');
    return turns.map(({ gap, length }, i): Assignment => {
      const start = clock + gap * MINUTE;
      clock = start + length * MINUTE;
      return { id: `P${i}`, crew: 'A', start, end: clock, travelMinutes: 0 };
    });
  });

describe('a roster compared with a count minute by minute', () => {
  // Quarter hours, in UTC, so that a plain array can be the witness.
  const quarters = fc
    .array(
      fc.record({ gap: fc.integer({ min: 1, max: 120 }), length: fc.integer({ min: 4, max: 60 }) }),
      { minLength: 1, maxLength: 20 },
    )
    .map((turns) => {
      let clock = 0;
      return turns.map(({ gap, length }) => {
        const from = clock + gap;
        clock = from + length;
        return { from, to: clock };
      });
    });
  const rosterOf = (turns: { from: number; to: number }[]): Assignment[] =>
    turns.map(({ from, to }, i) => ({
      id: `${i}`,
      crew: 'A',
      start: from * 15 * MINUTE,
      end: to * 15 * MINUTE,
      travelMinutes: 0,
    }));
  const worst = (turns: { from: number; to: number }[], width: number) => {
    const last = turns.at(-1)!.to;
    const worked = new Array<number>(last + 1).fill(0);
    for (const { from, to } of turns) for (let q = from; q < to; q += 1) worked[q] = 1;
    let most = 0;
    for (let start = -width; start <= last; start += 1) {
      let sum = 0;
      for (let q = Math.max(0, start); q < Math.min(last, start + width); q += 1) sum += worked[q]!;
      most = Math.max(most, sum);
    }
    return most * 15;
  };
  it('breaks the hours of some seven days exactly when some seven days hold too many', () => {
    fc.assert(
      fc.property(quarters, fc.integer({ min: 600, max: 4000 }), (turns, minutes) => {
        const set = only({ limit: 'hours-in-seven-days', minutes });
        const found = checkRoster(rosterOf(turns), set, 'UTC').breaches;
        const most = worst(turns, 7 * 96);
        expect(found.length > 0).toBe(most > minutes);
        if (found.length > 0) expect(Math.max(...found.map((breach) => breach.found))).toBe(most);
      }),
      { numRuns: 60 },
    );
  });
  it('breaks the turns of fourteen days exactly when some fourteen days hold too many', () => {
    fc.assert(
      fc.property(quarters, fc.integer({ min: 1, max: 16 }), (turns, most) => {
        const set = only({ limit: 'turns-in-fourteen-days', turns: most });
        const days = turns.map(({ from }) => Math.floor(from / 96));
        const fullest = Math.max(
          ...days.map((first) => days.filter((day) => day >= first && day < first + 14).length),
        );
        const found = checkRoster(rosterOf(turns), set, 'UTC').breaches;
        expect(found.length > 0).toBe(fullest > most);
      }),
    );
  });
});

describe('a cure', () => {
  const names = [
    'safety-critical-rolling',
    'safety-critical-calendar',
    'fatigue-factors',
    'us-passenger-crew',
  ];
  const sets = names.map(sample);
  it('ends the breach it is given for, and a minute less does not', () => {
    fc.assert(
      fc.property(anyRoster, fc.constantFrom(...sets), (roster, set) => {
        for (const breach of checkRoster(roster, set, zone).breaches) {
          const same = (list: Assignment[]) =>
            checkRoster(list, set, zone).breaches.some(
              (b) => b.assignment === breach.assignment && b.name === breach.name,
            );
          const apply = (less: number) =>
            roster.flatMap((assignment) => {
              if (assignment.id !== breach.assignment) return [assignment];
              const cure = breach.cure;
              return (
                cured(
                  assignment,
                  'minutes' in cure ? { ...cure, minutes: cure.minutes - less } : cure,
                ) ?? []
              );
            });
          expect(same(apply(0))).toBe(false);
          if ('minutes' in breach.cure && breach.cure.minutes > 1)
            expect(same(apply(1))).toBe(true);
        }
      }),
      { numRuns: 25 },
    );
  });
  it('applied again and again, first breach first, leaves a roster that breaks nothing', () => {
    fc.assert(
      fc.property(anyRoster, fc.constantFrom(...sets), (first, set) => {
        let roster = first;
        for (let i = 0; i < 500; i += 1) {
          const breach = checkRoster(roster, set, zone).breaches[0];
          if (!breach) return;
          roster = roster.flatMap((assignment) =>
            assignment.id === breach.assignment
              ? (cured(assignment, breach.cure) ?? [])
              : [assignment],
          );
        }
        expect.fail('still broken after 500 cures');
      }),
      { numRuns: 20 },
    );
  });
});
