// Faults planted in what is said of a package that fits a window: each is found.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { fitOne, type FitVerdict } from '../../../src/planner/fit/index.js';
import { checkedFit } from '../../../src/cli/verbs/fit.js';
import { FitCheck, type ClaimedFit } from '../../../src/verify/index.js';
import { activity, plan, resource, rules, window } from '../../helpers/plan-builders.js';

const document = plan({
  windows: [
    window('P1', 0, 480, { lines: ['up'], isolation: ['S1'] }),
    window('P2', 1440, 480, { lines: ['up'] }),
    window('P3', 2880, 480, { lines: ['up'], isolation: ['S1'], status: 'withdrawn' }),
  ],
  activities: [
    activity('A1', 60, { resources: { crane: 1 }, isolation: ['S1'], madeGoodBy: ['B1'] }),
    activity('A2', 45, { resources: { crane: 1 }, after: ['A1 + 30'], keyDate: 400 }),
    activity('A3', 0, { units: [2, 20, 10, 5], lines: ['up'] }),
    activity('B1', 30, { package: 'W2', after: ['A1'] }),
  ],
  resources: [resource('crane', [{ capacity: 1 }])],
  rules: rules({ leadIn: 30, leadOut: 20, margin: 25 }),
});
const good = fitOne(document, 'W1', 'P1');
const check = new FitCheck(document);
const shift = (id: string, minutes: number): ClaimedFit => ({
  ...good,
  placements: good.placements.map((placement) =>
    placement.activity === id
      ? {
          ...placement,
          from: placement.from + minutes * MINUTE,
          to: placement.to + minutes * MINUTE,
        }
      : placement,
  ),
});

describe('the check of a fit', () => {
  it('finds nothing against what fits', () => {
    expect(good).toMatchObject({ fits: true });
    expect(good.placements.map((placement) => placement.activity)).toContain('B1');
    expect(check.faultsOf(good)).toEqual([]);
    expect(checkedFit(good, check)).toBe(good);
  });

  it.each<[string, string, ClaimedFit]>([
    ['a minute more to spare', 'spare', { ...good, spareMinutes: good.spareMinutes! + 1 }],
    ['a minute less to spare', 'spare', { ...good, spareMinutes: good.spareMinutes! - 1 }],
    ['no minutes to spare', 'spare', { ...good, spareMinutes: null }],
    ['work in the lead-in', 'lead-in', shift('A1', -10)],
    ['work before what it waits for', 'link', shift('A2', -20)],
    ['work after its key date', 'late', shift('A2', 250)],
    ['work in the margin', 'margin', shift('A3', 480 - 55 - good.placements[0]!.from / MINUTE)],
    [
      'a piece left out',
      'left-out',
      { ...good, placements: good.placements.filter((placement) => placement.activity !== 'A3') },
    ],
    [
      'what makes it good left out, of another package',
      'left-out',
      { ...good, placements: good.placements.filter((placement) => placement.activity !== 'B1') },
    ],
    [
      'a unit left out',
      'minutes',
      {
        ...good,
        placements: good.placements.map((placement) =>
          placement.activity === 'A3' ? { ...placement, units: 1 } : placement,
        ),
      },
    ],
    ['another window than it lies in', 'unknown-window', { ...good, window: 'P2' }],
    ['a withdrawn window', 'withdrawn', asIn('P3', 2880)],
    ['a window without its isolation', 'isolation', asIn('P2', 1440)],
    ['a window that is not there', 'unknown-window', { ...good, window: 'P9' }],
    ['a package that is not there', 'nothing-placed', { ...good, package: 'W9', placements: [] }],
    ['nothing placed', 'left-out', { ...good, placements: [] }],
    [
      'a stranger placed',
      'unknown-activity',
      { ...good, placements: [...good.placements, { ...good.placements[0]!, activity: 'Z9' }] },
    ],
  ])('finds %s', (_, code, claim) => {
    expect(check.faultsOf(claim).map((fault) => fault.code)).toContain(code);
  });

  it('turns a yes that does not hold into a no that names the fault', () => {
    const wrong: FitVerdict = { ...good, spareMinutes: good.spareMinutes! + 5 };
    const told = checkedFit(wrong, check);
    expect(told).toMatchObject({ fits: false, proven: false, spareMinutes: null, placements: [] });
    expect(told.reasons[0]).toMatchObject({ code: 'check-failed' });
    expect(told.reasons[0]!.text).toContain('THE CHECK FOUND A FAULT');
  });
});

/** The same, so much later, in another window. */
function asIn(id: string, minutes: number): ClaimedFit {
  return {
    ...good,
    window: id,
    placements: good.placements.map((placement) => ({
      ...placement,
      window: id,
      from: placement.from + minutes * MINUTE,
      to: placement.to + minutes * MINUTE,
    })),
  };
}
