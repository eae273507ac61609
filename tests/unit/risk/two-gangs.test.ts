import { describe, expect, it } from 'vitest';
import { minutesBetween } from '../../../src/calendar/index.js';
import type { Activity } from '../../../src/model/index.js';
import { handback, type Actual } from '../../../src/risk/index.js';
import {
  anActivity,
  aPlan,
  at,
  aWindow,
  placed,
  rulesWith,
  whole,
} from '../../helpers/handback-plan.js';

// Two gangs, each at repeated work on a line of its own, by sums done by hand: lengths are certain.
const gang = (id: string, line: string, units: number, minutesPerUnit: number): Activity =>
  anActivity(
    id,
    { kind: 'units', units, done: 0, minutesPerUnit, setUpMinutes: 0, makeSafeMinutes: 0 },
    { lines: [line], madeGoodBy: 'none' },
  );
const rules = rulesWith({
  leadIn: [],
  leadOut: [],
  margin: { minutes: 0 },
  handback: { chance: 0.9 },
});
const window = aWindow({ lines: ['Up', 'Down'], end: at(300) });

const look = (
  works: readonly (readonly [Activity, number, number])[],
  moment: number,
  actuals: readonly Actual[],
) => {
  const placements = works.map(([{ id, work }, from, to]) =>
    placed(id, from, to, work.kind === 'units' ? work.units : undefined),
  );
  const plan = aPlan(
    works.map(([activity]) => activity),
    { rules, windows: [window] },
  );
  return handback(plan, window, placements, {
    ...{ seed: 3, runs: 500, at: at(moment), actuals },
  }).live!;
};
const begun = (activity: string, unitsDone: number, minute: number): Actual => ({
  ...{ activity, startedAt: at(0), unitsDone, unitsAt: at(minute) },
});

describe('the advice where two gangs are at repeated work', () => {
  it('counts the work that has to stop, not the one that may go on', () => {
    // At 200: Up needs 2 x 40; Down needs 3 x 50, of which 100 minutes have room for 2.
    const live = look(
      [
        [gang('UP', 'Up', 4, 40), 0, 160],
        [gang('DOWN', 'Down', 5, 50), 0, 250],
      ],
      200,
      [begun('UP', 2, 200), begun('DOWN', 2, 200)],
    );
    expect(live.advice).toMatchObject({
      ...{ say: 'more', activity: 'DOWN', more: 2, leaveOut: [], alsoStop: [] },
    });
  });

  it('names the other work that stops short, where one has to stop and both are too long', () => {
    // At 200 neither has room for all of it: one goes on with so many as fit, while the other stops.
    const live = look(
      [
        [gang('UP', 'Up', 5, 60), 0, 300],
        [gang('DOWN', 'Down', 5, 50), 0, 250],
      ],
      200,
      [begun('UP', 2, 200), begun('DOWN', 2, 200)],
    );
    expect(live.advice).toMatchObject({
      ...{ say: 'more', activity: 'DOWN', more: 2, leaveOut: [] },
      alsoStop: [{ activity: 'UP', units: 2 }],
    });
    expect(live.advice.why).toContain('2 more, 2 of Activity UP: ');
    // Ways on differ in what is done, so no two are told alike.
    const told = live.options.map(({ activity, units, leaveOut, alsoStop }) =>
      JSON.stringify([activity, units, leaveOut, alsoStop]),
    );
    expect(new Set(told).size).toBe(told.length);
  });

  it('says what must be so of each unit that is taken to be under way', () => {
    const live = look(
      [
        [gang('UP', 'Up', 5, 60), 0, 300],
        [gang('DOWN', 'Down', 5, 70), 0, 350],
      ],
      290,
      [begun('UP', 2, 250), begun('DOWN', 2, 250)],
    );
    expect(live.advice).toMatchObject({ say: 'stop', alsoStop: [{ activity: 'DOWN', units: 2 }] });
    for (const name of ['Activity UP', 'Activity DOWN'])
      expect(live.advice.why).toContain(`Only if unit 3 of ${name} has not begun`);
  });
});

describe('repeated work that was set up and has no unit done yet', () => {
  it('is at its first unit, and has outrun nothing', () => {
    const work: Activity['work'] = {
      ...{ kind: 'units', units: 3, done: 0, minutesPerUnit: 40, spread: { low: 30, high: 60 } },
      ...{ setUpMinutes: 15, makeSafeMinutes: 0 },
    };
    const piles = anActivity('PILE', work, { madeGoodBy: 'none' });
    const started = { activity: 'PILE', startedAt: at(0) };
    const live = look([[piles, 0, 135]], 40, [started]);
    expect(live.beyondEstimate).toEqual([]);
    // 15 to set up and three of 40; a stop now holds where the first has not begun.
    expect(minutesBetween(at(135), live.forecastHandback)).toBe(0);
    const stop = live.options.find(({ more }) => more === 0)!;
    expect(stop.condition).toContain('Only if unit 1 of Activity PILE has not begun');
    // After 15 and 60 minutes it has.
    expect(look([[piles, 0, 135]], 76, [started]).beyondEstimate).toEqual(['Activity PILE']);
  });
});

describe('a line on which nothing is left to do and which nobody has recorded as handed back', () => {
  it('is handed back no sooner than now', () => {
    const over = { activity: 'CUT', startedAt: at(0), finishedAt: at(100) };
    const live = look([[anActivity('CUT', whole(100)), 0, 100]], 280, [over]);
    expect(minutesBetween(at(280), live.forecastHandback)).toBe(0);
    expect(live.marginLeftMinutes).toBe(20);
  });
});
