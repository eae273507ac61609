import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import {
  checkRoster,
  crewsNeeded,
  limitSetSchema,
  type Limit,
} from '../../../src/rules/people/index.js';
import { at } from '../../helpers/clock.js';
import { folder, sample } from './roster-build.js';

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
          const roster = plan.turns.map((turn, i) => ({
            ...turn,
            id: `${i}`,
            crew: `${turn.crew}`,
            travelMinutes: 0,
          }));
          expect(checkRoster(roster, limits, 'UTC').breaches).toEqual([]);
          const sum = plan.turns.reduce((total, item) => total + (item.end - item.start), 0);
          expect(sum).toBe(gross * MINUTE);
          expect(new Set(plan.turns.map((turn) => turn.crew)).size).toBe(plan.crews);
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
