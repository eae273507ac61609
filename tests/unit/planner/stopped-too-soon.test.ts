import { describe, expect, it } from 'vitest';
import { allocate } from '../../../src/planner/search/index.js';
import { planFrom } from '../../../src/tables/index.js';

const { plan } = planFrom({
  windows: {
    file: 'windows.csv',
    content: 'window,start,end\nW1,2027-05-08 23:00,2027-05-09 05:00\nW2,2027-05-15 23:00,05:00\n',
  },
  work: { file: 'work.csv', content: 'activity,minutes,after\nA,60,\nB,400,\nC,60,A\n' },
  zone: 'Europe/London',
});

/** A clock on which each look is a millisecond later. */
const clock = (): (() => number) => {
  let now = 0;
  return () => (now += 1);
};

describe('a search that is stopped before its first plan is whole', () => {
  it('gives no reason that it did not find', () => {
    const found = allocate(plan, { clock: clock(), seconds: 0.0001 });
    expect(found.placements).toEqual([]);
    for (const item of found.unplaced)
      expect(item.reasons.map((each) => each.code)).toEqual(['stopped-too-soon']);
    expect(found.unplaced).toHaveLength(3);
    expect(found.certificate.text).toBe('nothing is placed: the search was stopped too soon');
  });

  it('gives reasons as soon as one plan is whole', () => {
    const found = allocate(plan, { clock: clock() });
    expect(found.placements.map((placement) => placement.activity)).toEqual(['A', 'C']);
    expect(found.unplaced.map((item) => item.activity)).toEqual(['B']);
    expect(found.unplaced[0]!.reasons.map((each) => each.code)).not.toContain('stopped-too-soon');
  });
});
