// Changes that mend a roster, each found again by trying every one.
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '../../../src/calendar/index.js';
import {
  changed,
  checkRoster,
  mendAll,
  mendsOf,
  type Assignment,
  type LimitSet,
  type MendContext,
} from '../../../src/rules/people/index.js';
import { aWindow } from './ledger-build.js';
import { onDay, only } from './roster-build.js';
import { cases } from '../../helpers/cases.js';

const zone = 'Europe/London';
const context = (set: LimitSet, windows: MendContext['windows'] = []): MendContext => ({
  set,
  zone,
  windows,
});
const breachesOf = (roster: readonly Assignment[], set: LimitSet) =>
  checkRoster(roster, set, zone).breaches;

const rest = only({ limit: 'rest-between-turns', minutes: 720 });
const twelve = only({ limit: 'longest-turn', minutes: 720 });

describe('a change to a roster', () => {
  it('is made to its turn and to no other', () => {
    const [one, two] = [onDay(0, 6, 60, { id: 'T1' }), onDay(1, 6, 60, { id: 'T2' })];
    const second = (change: Parameters<typeof changed>[1]) => changed([one, two], change)[1];
    const ten = { turn: 'T2', minutes: 10 } as const;
    const [from, to] = [two.start, two.end];
    const by = 10 * MINUTE;
    expect(second({ change: 'give to', turn: 'T2', crew: 'B' })).toEqual({ ...two, crew: 'B' });
    expect(second({ change: 'finish earlier', ...ten })).toEqual({ ...two, end: to - by });
    expect(second({ change: 'start later', ...ten })).toEqual({ ...two, start: from + by });
    expect(second({ change: 'move later', ...ten })).toEqual({
      ...two,
      start: from + by,
      end: to + by,
    });
    expect(second({ change: 'move earlier', ...ten })).toEqual({
      ...two,
      start: from - by,
      end: to - by,
    });
    expect(changed([one, two], { change: 'drop', turn: 'T2' })).toEqual([one]);
  });
});

describe('a breach of rest', () => {
  // 06:00 to 14:00, then from 22:00: 8 hours of rest, 4 too few.
  const first = onDay(0, 6, 480, { id: 'T1' });
  const second = onDay(0, 22, 480, { id: 'T2' });
  const roster = [first, second];
  const [breach] = breachesOf(roster, rest);

  it('is ended by the fewest minutes of each kind of change, the smallest first', () => {
    expect(mendsOf(breach!, roster, context(rest))).toEqual([
      { change: 'move later', turn: 'T2', minutes: 240, changedMinutes: 240, lostMinutes: 0 },
      { change: 'move earlier', turn: 'T1', minutes: 240, changedMinutes: 240, lostMinutes: 0 },
      { change: 'finish earlier', turn: 'T1', minutes: 240, changedMinutes: 240, lostMinutes: 240 },
      { change: 'start later', turn: 'T2', minutes: 240, changedMinutes: 240, lostMinutes: 240 },
      { change: 'drop', turn: 'T2', changedMinutes: 480, lostMinutes: 480 },
    ]);
  });

  it('is ended by a crew that can take the turn, and by none that cannot', () => {
    const given = (other: readonly Assignment[]) =>
      mendsOf(breach!, [...roster, ...other], context(rest)).filter(
        (mend) => mend.change === 'give to',
      );
    const free = onDay(0, 6, 60, { id: 'B1', crew: 'B' });
    expect(given([free])).toEqual([
      { change: 'give to', turn: 'T2', crew: 'B', changedMinutes: 480, lostMinutes: 0 },
    ]);
    const tired = onDay(0, 12, 60, { id: 'C1', crew: 'C' });
    expect(given([tired])).toEqual([]);
    expect(given([tired, free])).toMatchObject([{ crew: 'B' }]);
    // A crew in breach already may take it where that grows no worse.
    const worn = [
      onDay(-3, 6, 480, { id: 'E1', crew: 'E' }),
      onDay(-3, 22, 480, { id: 'E2', crew: 'E' }),
    ];
    expect(given(worn)).toMatchObject([{ crew: 'E' }]);
  });

  it('is ended by no crew that is not known to hold the competence of the turn', () => {
    const needs = [first, { ...second, competence: ['crane', 'slinger'] }];
    const given = (...other: Assignment[]) =>
      mendsOf(breach!, [...needs, ...other], context(rest)).filter(
        (mend) => mend.change === 'give to',
      );
    const free = (competence?: string[]) =>
      onDay(0, 6, 60, { id: 'B1', crew: 'B', ...(competence && { competence }) });
    expect(given(free())).toEqual([]);
    expect(given(free(['crane']))).toEqual([]);
    const both = [
      free(['crane']),
      onDay(3, 6, 60, { id: 'B2', crew: 'B', competence: [' Slinger '] }),
    ];
    expect(given(...both)).toMatchObject([{ crew: 'B', competence: ['crane', 'slinger'] }]);
    // Of a turn that names none nothing is checked, and the change says so.
    expect(
      mendsOf(breach!, [...roster, free(['crane'])], context(rest)).find(
        (mend) => mend.change === 'give to',
      ),
    ).not.toHaveProperty('competence');
  });

  it('over rosters drawn at random gives no turn to a crew whose rows lack what it needs', () => {
    // An outside check: what a crew holds is counted here by hand from the rows, and sharing no code.
    let seed = 7;
    const draw = (below: number): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed % below;
    };
    const names = ['crane', 'slinger', 'welder'];
    let given = 0;
    let barred = 0;
    for (let round = 0; round < cases(60); round += 1) {
      const turns = Array.from({ length: 18 }, (_, i) =>
        onDay(Math.floor(i / 3), 6 + draw(14), 480, {
          id: `T${i}`,
          crew: 'ABC'[draw(3)]!,
          competence: names.filter(() => draw(4) === 0),
        }),
      );
      const held = (crew: string) =>
        turns.filter((turn) => turn.crew === crew).flatMap((turn) => turn.competence!);
      for (const item of breachesOf(turns, rest))
        for (const mend of mendsOf(item, turns, context(rest))) {
          if (mend.change !== 'give to') continue;
          given += 1;
          const needed = turns.find((other) => other.id === mend.turn)!.competence!;
          expect(held(mend.crew)).toEqual(expect.arrayContaining([...needed]));
        }
      barred += turns.filter((turn) =>
        [...'ABC'].some((crew) => turn.competence!.some((name) => !held(crew).includes(name))),
      ).length;
    }
    expect(given).toBeGreaterThan(50);
    expect(barred).toBeGreaterThan(50);
  });

  it('never moves a turn out of the window that it mans', () => {
    const night = (end: Assignment['end']) => [
      { ...aWindow({ id: 'W1' }), start: second.start, end: second.end + (end - second.end) },
    ];
    const manned = [first, { ...second, window: 'W1' }];
    const moves = (end: number) =>
      mendsOf(breachesOf(manned, rest)[0]!, manned, context(rest, night(end))).filter(
        (mend) => mend.turn === 'T2' && mend.change === 'move later',
      );
    expect(moves(second.end)).toEqual([]);
    expect(moves(second.end + 239 * MINUTE)).toEqual([]);
    expect(moves(second.end + 240 * MINUTE)).toHaveLength(1);
    // A turn that does not lie in its window is not held to it.
    expect(moves(second.end - MINUTE)).toHaveLength(1);
  });

  it('has no change where the turn is not in the roster', () => {
    expect(mendsOf(breach!, [first], context(rest))).toEqual([]);
  });

  it('is not mended by a change that makes another', () => {
    const third = onDay(1, 18, 480, { id: 'T3' });
    const three = [first, second, third];
    const mends = mendsOf(breachesOf(three, rest)[0]!, three, context(rest));
    expect(mends.some((mend) => mend.turn === 'T2' && mend.change === 'move later')).toBe(false);
    for (const mend of mends) {
      const after = breachesOf(changed(three, mend), rest);
      expect(after).toEqual([]);
    }
  });
});

describe('a turn too long', () => {
  it('is cut by the minutes too many, a minute short of all of it at most', () => {
    const long = onDay(0, 6, 725, { id: 'L' });
    const mends = mendsOf(breachesOf([long], twelve)[0]!, [long], context(twelve));
    expect(mends.map((mend) => [mend.change, mend.changedMinutes])).toEqual([
      ['finish earlier', 5],
      ['start later', 5],
      ['drop', 725],
    ]);
    const one = only({ limit: 'longest-turn', minutes: 1 });
    const short = onDay(0, 6, 10, { id: 'S' });
    const [breach] = breachesOf([short], one);
    expect(breach!.cure).toEqual({ change: 'finish earlier', assignment: 'S', minutes: 9 });
    expect(mendsOf(breach!, [short], context(one)).map((each) => each.changedMinutes)).toEqual([
      9, 9, 10,
    ]);
  });
});

describe('a roster mended as a whole', () => {
  it('is left without a breach by changes made one after another', () => {
    const roster = [
      onDay(0, 6, 780, { id: 'A1' }),
      onDay(3, 6, 730, { id: 'A2' }),
      onDay(6, 6, 720, { id: 'A3' }),
    ];
    const { changes, left } = mendAll(roster, context(twelve));
    expect(left).toEqual([]);
    expect(changes.map((change) => [change.turn, change.change, change.changedMinutes])).toEqual([
      ['A1', 'finish earlier', 60],
      ['A2', 'finish earlier', 10],
    ]);
    const after = changes.reduce<Assignment[]>((turns, mend) => changed(turns, mend), roster);
    expect(breachesOf(after, twelve)).toEqual([]);
    expect(mendAll(roster, context(twelve), 1).changes).toHaveLength(1);
    expect(mendAll(roster, context(twelve), 1).left).toHaveLength(1);
    expect(mendAll(after, context(twelve))).toEqual({ changes: [], left: [] });
  });
});

describe('night work within a day', () => {
  it('counts only a night of the last 24 hours', () => {
    const hazard = only({ limit: 'night-hazard', minutes: 480 });
    const night = onDay(0, 22, 420, { id: 'N' });
    const day = onDay(4, 8, 600, { id: 'D' });
    expect(breachesOf([night, day], hazard)).toEqual([]);
    const long = onDay(0, 20, 600, { id: 'M' });
    expect(breachesOf([long], hazard).map((breach) => [breach.assignment, breach.excess])).toEqual([
      ['M', 120],
    ]);
    expect(long.end - long.start).toBe(10 * HOUR);
  });
});
