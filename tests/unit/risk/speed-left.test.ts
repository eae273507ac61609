import { describe, expect, it } from 'vitest';
import type { Activity } from '../../../src/model/index.js';
import { speedLimitsAt } from '../../../src/risk/index.js';
import { activity } from '../../helpers/plan-builders.js';

const HOUR = 3_600_000;
const mph = (value: number) => ({ value, unit: 'mph' }) as const;
const at = (id: string, window: string, from: number, to: number, units?: number) => ({
  activity: id,
  window,
  from: from * HOUR,
  to: to * HOUR,
  ...(units !== undefined && { units }),
});
const place = (
  id: string,
  lines: string[],
  extent?: [number, number],
  limit?: number,
): Activity => ({
  ...activity(id, 60),
  lines,
  ...(extent && { extent: { from: extent[0], to: extent[1] } }),
  ...(limit !== undefined && { speedAfter: mph(limit) }),
});
const lifts = (rows: Activity[], placed: ReturnType<typeof at>[], moment: number) =>
  speedLimitsAt(rows, placed, moment * HOUR).map(({ activity: { id }, lifted }) => [
    id,
    lifted && `${lifted.activity} in ${lifted.window!} at ${lifted.at / HOUR}`,
  ]);

describe('a speed limit left by work', () => {
  const relay = place('RELAY', ['Up'], [2000, 3000], 20);

  it('stays until later work has covered the last of its place', () => {
    const rows = [relay, place('A', ['Up'], [2000, 2500]), place('B', ['Up'], [2400, 3000])];
    const [one, two, three] = [
      at('RELAY', 'W1', 0, 4),
      at('A', 'W2', 100, 101),
      at('B', 'W3', 200, 201),
    ];
    expect(lifts(rows, [one, two], 50)).toEqual([['RELAY', null]]);
    expect(lifts(rows, [one, two, three], 50)).toEqual([['RELAY', 'B in W3 at 201']]);
    expect(lifts([relay, rows[2]!], [one, three], 50)).toEqual([['RELAY', null]]);
  });

  it('is lifted on its own lines alone', () => {
    const both = { ...relay, lines: ['Up', 'Down'] };
    const one = at('RELAY', 'W1', 0, 4);
    const later = at('A', 'W2', 100, 101);
    expect(lifts([both, place('A', ['Up'], [0, 9000])], [one, later], 50)).toEqual([
      ['RELAY', null],
    ]);
    expect(lifts([both, place('A', [], [0, 9000])], [one, later], 50)[0]![1]).toContain('A in W2');
    expect(lifts([relay, place('A', ['Down'], [0, 9000])], [one, later], 50)).toEqual([
      ['RELAY', null],
    ]);
    // A blank extent is everywhere: a stretch of it lifts no more than that stretch.
    const anywhere = place('RELAY', ['Up'], undefined, 20);
    expect(lifts([anywhere, place('A', ['Up'], [0, 9000])], [one, later], 50)).toEqual([
      ['RELAY', null],
    ]);
    expect(lifts([anywhere, place('A', ['Up'])], [one, later], 50)[0]![1]).toContain('A in W2');
  });

  it('gives way to the limit of later work in the same place', () => {
    const rows = [relay, place('TAMP', ['Up'], [2000, 3000], 50)];
    const placed = [at('RELAY', 'W1', 0, 4), at('TAMP', 'W2', 100, 101)];
    expect(lifts(rows, placed, 150)).toEqual([
      ['RELAY', 'TAMP in W2 at 101'],
      ['TAMP', null],
    ]);
  });

  it('is there after each stop of repeated work, and is lifted by all units of repeated work', () => {
    const units = { kind: 'units', units: 4, done: 0, minutesPerUnit: 60, setUp: 0, makeSafe: 0 };
    const renew = { ...relay, work: units } as unknown as Activity;
    const tamp = { ...place('TAMP', ['Up'], [2000, 3000]), work: units } as unknown as Activity;
    const renewed = [at('RELAY', 'W1', 0, 2, 2), at('RELAY', 'W2', 100, 102, 2)];
    expect(lifts([renew], renewed, 50)).toEqual([['RELAY', null]]);
    expect(lifts([renew], renewed, 1)).toEqual([]);
    const half = at('TAMP', 'W3', 200, 202, 2);
    expect(lifts([renew, tamp], [...renewed, half], 150)).toEqual([['RELAY', null]]);
    expect(lifts([renew, tamp], [...renewed, half, at('TAMP', 'W4', 300, 302, 2)], 150)).toEqual([
      ['RELAY', 'TAMP in W4 at 302'],
    ]);
  });
});
