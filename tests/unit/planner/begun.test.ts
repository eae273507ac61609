import { describe, expect, it } from 'vitest';
import { Board, headsOf, LedgerCache, problemOf } from '../../../src/planner/fit/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { oracle } from '../../helpers/oracle.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';

// Work of two units takes the whole road; only one of them leaves room for the two that begin with it.
const road = resource('road', [{ capacity: 2 }]);
const document = plan({
  windows: [window('P1', 0, 180)],
  activities: [
    activity('A1', 0, { units: [2, 30, 30, 0], resources: { road: 2 } }),
    activity('A2', 120, { resources: { road: 1 }, madeGoodBy: ['A3'] }),
    activity('A3', 60, { resources: { road: 1 }, after: ['start of A1', 'start of A2'] }),
  ],
  resources: [road],
});

describe('what waits for the start of work that has begun', () => {
  it('can still start where the rest of that work finds no place', () => {
    const { windows, activities } = document;
    const problem = problemOf(document, { windows, activities }, new LedgerCache(document));
    const board = new Board(problem);
    board.put({ task: 0, window: 0, start: 0, end: 60, units: 1 });
    board.put({ task: 1, window: 0, start: 60, end: 180, units: 1 });
    const { starts, ends } = headsOf(board, 60);
    expect([starts[2], ends[2]]).toEqual([60, 120]);
    expect(ends[0]).toBe(Number.POSITIVE_INFINITY);
  });

  it('is planned as the plain search plans it', () => {
    const found = allocate(document, { clock: () => 0 });
    const best = oracle(document, ['key-dates', 'finish'], 30);
    expect(found.unplaced.map((item) => item.activity)).toEqual(['A1']);
    expect(best).toMatchObject({ unplaced: 1, unitsOut: 1, values: { finish: 180 } });
    expect(found.placements).toHaveLength(3);
    expect(found.finishesAt).toBe(180 * 60_000);
    expect(verify(document, found)).toEqual([]);
  });
});
