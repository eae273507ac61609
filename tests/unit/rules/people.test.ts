import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAY, HOUR, MINUTE } from '../../../src/calendar/index.js';
import {
  checkRoster,
  crewsNeeded,
  cured,
  limitSetSchema,
  type Assignment,
  type Limit,
  type LimitSet,
} from '../../../src/rules/people/index.js';
import { at, zone } from '../../helpers/clock.js';

const folder = new URL('../../../sample-csv/limits/', import.meta.url);
const sample = (name: string): LimitSet =>
  limitSetSchema.parse(JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')));

let serial = 0;
function turn(start: string, end: string, more: Partial<Assignment> = {}): Assignment {
  serial += 1;
  return { id: `T${serial}`, crew: 'A', start: at(start), end: at(end), travelMinutes: 0, ...more };
}
/** A turn on the n-th day after Monday 4 January 2027. */
function onDay(
  day: number,
  hour: number,
  minutes: number,
  more: Partial<Assignment> = {},
): Assignment {
  const start = at('2027-01-04 00:00') + day * DAY + hour * HOUR;
  return {
    id: `D${day}-${hour}`,
    crew: 'A',
    start,
    end: start + minutes * MINUTE,
    travelMinutes: 0,
    ...more,
  };
}
const only = (limit: Record<string, unknown>, set: Record<string, unknown> = {}): LimitSet =>
  limitSetSchema.parse({
    schema: 1,
    name: 'test',
    travel: 'not counted',
    ...set,
    limits: [{ name: 'test', source: 'this test', sureness: 'our own', ...limit }],
  });
const broken = (roster: Assignment[], set: LimitSet) =>
  checkRoster(roster, set, zone).breaches.map((b) => [b.assignment, b.limit, b.excess]);

describe('one turn', () => {
  const twelve = only({ limit: 'longest-turn', minutes: 720 });
  it('may be exactly as long as the limit and not a minute longer', () => {
    expect(broken([onDay(0, 7, 720)], twelve)).toEqual([]);
    expect(broken([onDay(0, 7, 721)], twelve)).toEqual([['D0-7', 'longest-turn', 1]]);
  });
  it('is cured by finishing earlier by the excess', () => {
    expect(checkRoster([onDay(0, 7, 755)], twelve, zone).breaches[0]?.cure).toEqual({
      change: 'finish earlier',
      assignment: 'D0-7',
      minutes: 35,
    });
  });
  it('counts travelling both ways where travel counts', () => {
    const counted = only({ limit: 'longest-turn', minutes: 720 }, { travel: 'counted' });
    const roster = [onDay(0, 7, 660, { travelMinutes: 31 })];
    expect(broken(roster, counted)).toEqual([['D0-7', 'longest-turn', 2]]);
    expect(broken(roster, twelve)).toEqual([]);
  });
  it('lets one limit override the travel setting of its set', () => {
    const door = only({ limit: 'longest-turn', minutes: 720, travel: 'counted' });
    expect(broken([onDay(0, 7, 720, { travelMinutes: 5 })], door)).toHaveLength(1);
  });
  it('is held to the night limit only when enough of it is at night', () => {
    const night = only({ limit: 'longest-turn', minutes: 600, on: 'night' });
    // 18:01-02:00 holds 23:00-02:00: 3 h. A turn that ends a minute earlier is no night turn.
    expect(broken([onDay(0, 15, 660)], night)).toHaveLength(1);
    expect(broken([onDay(0, 15, 659)], night)).toHaveLength(0);
  });
  it('is held to the early limit only when it starts before the hour', () => {
    const early = only({ limit: 'longest-turn', minutes: 480, on: 'early' });
    expect(broken([turn('2027-01-04 04:59', '2027-01-04 13:00')], early)).toHaveLength(1);
    expect(broken([turn('2027-01-04 05:00', '2027-01-04 15:00')], early)).toHaveLength(0);
  });
});

describe('rest', () => {
  it('may be shorter once in seven days where the set allows it', () => {
    const set = only({ limit: 'rest-between-turns', minutes: 720, shorterOnce: 480 });
    const roster = [onDay(0, 7, 720), onDay(1, 3, 480), onDay(1, 21, 480)];
    // Rests of 8 h, then 10 h: the second is too short only because the first used the week's exception.
    expect(broken(roster, set)).toEqual([['D1-21', 'rest-between-turns', 120]]);
    expect(broken([onDay(0, 7, 720), onDay(1, 2, 480)], set)).toEqual([
      ['D1-2', 'rest-between-turns', 60],
    ]);
  });
  it('of a day must fall somewhere in every week', () => {
    const set = only({ limit: 'rest-in-period', minutes: 1440, days: 7 });
    const days = (list: number[]) => list.map((day) => onDay(day, 8, 480));
    expect(broken(days([0, 1, 2, 3, 4, 5, 7, 8]), set)).toEqual([]);
    // The seventh day running leaves no 24 h in the week that ends with it.
    expect(broken(days([0, 1, 2, 3, 4, 5, 6]), set).map(([id]) => id)).toEqual(['D6-8']);
  });
  it('between nights is not asked between days', () => {
    const set = only({ limit: 'rest-between-turns', minutes: 840, on: 'between nights' });
    expect(broken([onDay(0, 7, 720), onDay(1, 7, 720)], set)).toEqual([]);
    expect(broken([onDay(0, 19, 720), onDay(1, 19, 720)], set)).toEqual([
      ['D1-19', 'rest-between-turns', 120],
    ]);
  });
});

describe('a run', () => {
  it('of nights ends with a night off and drops the first one too many', () => {
    const set = only({ limit: 'nights-in-a-row', nights: 3 });
    const nights = (list: number[]) => list.map((day) => onDay(day, 22, 480));
    expect(broken(nights([0, 1, 2, 4, 5, 6]), set)).toEqual([]);
    const four = checkRoster(nights([0, 1, 2, 3]), set, zone).breaches;
    expect(four.map((b) => [b.assignment, b.found, b.cure.change])).toEqual([['D3-22', 4, 'drop']]);
  });
  it('of nights counts a turn after midnight to the night before', () => {
    const set = only({ limit: 'nights-in-a-row', nights: 1 });
    // Sunday 22:00-06:00, then Tuesday 00:00-05:00, which is Monday's night.
    expect(broken([onDay(0, 22, 480), onDay(2, 0, 300)], set)).toHaveLength(1);
    expect(broken([onDay(0, 22, 480), onDay(3, 0, 300)], set)).toHaveLength(0);
  });
  it('of days counts local days', () => {
    const set = only({ limit: 'days-in-a-row', days: 6 });
    const days = (n: number) => Array.from({ length: n }, (_, day) => onDay(day, 8, 480));
    expect(broken(days(6), set)).toEqual([]);
    expect(broken(days(7), set)).toEqual([['D6-8', 'days-in-a-row', 1]]);
  });
});

describe('hours in seven days', () => {
  const four = [3, 4, 5, 6].map((day) => onDay(day, 8, 600));
  const next = [7, 8, 9, 10].map((day) => onDay(day, 8, 600));
  it('are caught over any seven days where the week rolls', () => {
    const rolling = only({ limit: 'hours-in-seven-days', minutes: 3600, week: 'rolling' });
    expect(broken([...four, ...next], rolling).map(([id]) => id)).toEqual(['D9-8', 'D10-8']);
  });
  it('are not carried over a calendar week', () => {
    const calendar = only({ limit: 'hours-in-seven-days', minutes: 3600, week: 'calendar' });
    expect(broken([...four, ...next], calendar)).toEqual([]);
  });
  it('split a turn over the edge of two calendar weeks between them', () => {
    const set = only({ limit: 'hours-in-seven-days', minutes: 120, week: 'calendar' });
    // Sunday 20:00 to Monday 02:00: four hours in the first week, two in the second.
    expect(broken([onDay(6, 20, 360)], set)).toEqual([['D6-20', 'hours-in-seven-days', 120]]);
  });
  it('count a calendar week from the day the set names', () => {
    const set = only({
      limit: 'hours-in-seven-days',
      minutes: 3600,
      week: 'calendar',
      weekStarts: 'thu',
    });
    expect(broken([...four, ...next], set).map(([id]) => id)).toEqual(['D9-8']);
  });
});

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
      ...sample('fatigue-factors').limits.filter((one) => one.limit !== 'nights-in-a-row'),
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
      const i = roster.findIndex((one) => one.id === id);
      const one = roster[i]!;
      roster[i] = { ...one, start: one.start + startBy * MINUTE, end: one.end + endBy * MINUTE };
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
        if (found.length > 0) expect(Math.max(...found.map((one) => one.found))).toBe(most);
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
            roster.flatMap((one) => {
              if (one.id !== breach.assignment) return [one];
              const cure = breach.cure;
              return (
                cured(one, 'minutes' in cure ? { ...cure, minutes: cure.minutes - less } : cure) ??
                []
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
          roster = roster.flatMap((one) =>
            one.id === breach.assignment ? (cured(one, breach.cure) ?? []) : [one],
          );
        }
        expect.fail('still broken after 500 cures');
      }),
      { numRuns: 20 },
    );
  });
});

describe('crews for a window', () => {
  const shift = { longestMinutes: 720, restMinutes: 720, changeoverMinutes: 30 };
  const windowOf = (minutes: number) => ({
    start: at('2027-06-25 22:00'),
    end: at('2027-06-25 22:00') + minutes * MINUTE,
  });
  it('are one for a night, two for a weekend with rests as long as turns', () => {
    expect(crewsNeeded(windowOf(480), shift).crews).toBe(1);
    expect(crewsNeeded(windowOf(720), shift).crews).toBe(1);
    expect(crewsNeeded(windowOf(721), shift).crews).toBe(2);
    expect(crewsNeeded(windowOf(54 * 60), shift)).toMatchObject({
      crews: 2,
      changeoverMinutes: 120,
    });
  });
  it('are three when rest is longer than a turn', () => {
    expect(crewsNeeded(windowOf(54 * 60), { ...shift, longestMinutes: 600 }).crews).toBe(3);
  });
  it('man every minute within the limits they were made from', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10_000 }),
        fc.integer({ min: 60, max: 900 }),
        fc.integer({ min: 0, max: 1500 }),
        (gross, longestMinutes, restMinutes) => {
          const plan = crewsNeeded(windowOf(gross), {
            longestMinutes,
            restMinutes,
            changeoverMinutes: 0,
          });
          const limits = limitSetSchema.parse({
            schema: 1,
            name: 'made from the shift rule',
            travel: 'not counted',
            limits: [
              {
                limit: 'longest-turn',
                minutes: longestMinutes,
                name: 'turn',
                source: 't',
                sureness: 'our own',
              },
              ...(restMinutes > 0
                ? [
                    {
                      limit: 'rest-between-turns',
                      minutes: restMinutes,
                      name: 'rest',
                      source: 't',
                      sureness: 'our own',
                    },
                  ]
                : []),
            ],
          });
          const roster = plan.turns.map((one, i) => ({
            ...one,
            id: `${i}`,
            crew: `${one.crew}`,
            travelMinutes: 0,
          }));
          expect(checkRoster(roster, limits, 'UTC').breaches).toEqual([]);
          const sum = plan.turns.reduce((total, one) => total + (one.end - one.start), 0);
          expect(sum).toBe(gross * MINUTE);
          expect(new Set(plan.turns.map((one) => one.crew)).size).toBe(plan.crews);
        },
      ),
    );
  });
});

describe('the sample limit sets', () => {
  it('load, and every limit says where it comes from and how sure it is', () => {
    const files = readdirSync(folder).filter((file) => !file.startsWith('noise-'));
    expect(files.length).toBeGreaterThanOrEqual(8);
    for (const file of files) {
      const limits: readonly Limit[] = sample(file.replace('.json', '')).limits;
      expect(limits.length).toBeGreaterThan(0);
      for (const limit of limits) expect(limit.source.length).toBeGreaterThan(10);
    }
  });
});
