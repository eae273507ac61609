import { describe, expect, it } from 'vitest';
import { boundsOf, samePlace } from '../../../src/model/index.js';
import { planFrom } from '../../../src/tables/index.js';

const windows = {
  file: 'windows.csv',
  content: 'window,start,end,lines\nW1,2027-03-06 22:00,2027-03-07 06:00,Up;Down\n',
};
const work = (rows: string): ReturnType<typeof planFrom> =>
  planFrom({
    windows,
    work: {
      file: 'work.csv',
      content: `package,activity,after,minutes,lines,from,to,place,made good by,occupies,may wait,speed after\n${rows}\n`,
    },
  });

describe('the columns on the state of the line', () => {
  it('are read, and blank cells say nothing', () => {
    const { plan, faults } = work(
      'T,A,,90,Up,,,,B; C,alone,yes,20 mph\nT,B,A,60,Up,,,,none,shared,no,50 km/h\nT,C,B,60,Up,,,,,,,None',
    );
    expect(faults).toEqual([]);
    const [a, b, c] = plan.activities;
    expect(a).toMatchObject({
      madeGoodBy: ['B', 'C'],
      occupies: 'alone',
      mayWait: true,
      speedAfter: { value: 20, unit: 'mph' },
    });
    expect(b).toMatchObject({
      madeGoodBy: 'none',
      occupies: 'shared',
      speedAfter: { value: 50, unit: 'km/h' },
    });
    expect(b).not.toHaveProperty('mayWait');
    for (const key of ['madeGoodBy', 'occupies', 'mayWait', 'speedAfter'])
      expect(c).not.toHaveProperty(key);
  });

  it('leave out an activity whose making good has an error in its row', () => {
    const { plan, faults } = work(
      'T,A,,90,Up,,,,B,,,\nT,B,,never,Up,,,,none,,,\nT,C,,30,Up,,,,none,,,',
    );
    expect(plan.activities.map((activity) => activity.id)).toEqual(['C']);
    expect(faults.map((fault) => fault.code)).toContain('made-good-not-used');
  });
});

describe('boundsOf', () => {
  it('binds what lies between by links, and what those are bound to', () => {
    const { plan } = work(
      [
        'T,A,,90,Up,,,,C,,,',
        'T,B,A,60,Up,,,,X,,,',
        'T,C,B,60,Up,,,,none,,,',
        'T,X,B,60,Up,,,,none,,,',
        'T,D,C,60,Up,,,,none,,,',
      ].join('\n'),
    );
    expect(boundsOf(plan.activities)).toEqual([
      { activity: 'A', members: ['B', 'C', 'X'], unlinked: [] },
      { activity: 'B', members: ['X'], unlinked: [] },
    ]);
  });

  it('names what makes good without waiting for it', () => {
    const { plan } = work('T,A,,90,Up,,,,B,,,\nT,B,,60,Up,,,,none,,,');
    expect(boundsOf(plan.activities)).toEqual([{ activity: 'A', members: ['B'], unlinked: ['B'] }]);
  });
});

describe('samePlace', () => {
  it('takes blank lines for every line and a blank extent for everywhere; touching is not sharing', () => {
    const { plan } = work(
      [
        'T,A,,9,Up,100,200,,,,,',
        'T,B,,9,Up,200,300,,,,,',
        'T,C,,9,Down,100,200,,,,,',
        'T,D,,9,,150,160,,,,,',
        'T,E,,9,Up,,,,,,,',
        'T,F,,9,,,,outside,,,,',
      ].join('\n'),
    );
    const [a, b, c, d, e, f] = plan.activities;
    expect(samePlace(a!, b!)).toBe(false);
    expect(samePlace(a!, c!)).toBe(false);
    expect(samePlace(a!, d!)).toBe(true);
    expect(samePlace(c!, d!)).toBe(true);
    expect(samePlace(b!, e!)).toBe(true);
    expect(samePlace(e!, f!)).toBe(false);
  });
});
