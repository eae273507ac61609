import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../../src/calendar/index.js';
import { fitAll } from '../../../../src/planner/fit/index.js';
import { allocate } from '../../../../src/planner/search/index.js';
import type { Plan } from '../../../../src/model/index.js';
import { lineFaults } from '../../../helpers/line-check.js';
import { activity, plan, rules, window } from '../../../helpers/plan-builders.js';
import { processorMs } from '../../../helpers/processor-clock.js';
import { inJson } from '../../../helpers/in-json.js';

const track = (relay = 120, more: Partial<Plan> = {}): Plan =>
  plan({
    windows: [
      window('W1', 0, 360, { lines: ['Up'] }),
      window('W2', 10_080, 360, { lines: ['Up'] }),
    ],
    activities: [
      activity('LIFT', 90, { lines: ['Up'], madeGoodBy: ['TAMP'] }),
      activity('DIG', 120, { lines: ['Up'], after: ['LIFT'] }),
      activity('RELAY', relay, { lines: ['Up'], after: ['DIG'] }),
      activity('TAMP', 60, { lines: ['Up'], after: ['RELAY'] }),
    ],
    ...more,
  });

const search = (item: Plan) => allocate(item, { seconds: 2, clock: processorMs });

describe('track that is lifted out and made good by tamping', () => {
  it('is not begun where no window is long enough', () => {
    const found = search(track());
    expect(found.placements).toEqual([]);
    expect(found.unplaced.map((item) => item.activity)).toEqual(['LIFT', 'DIG', 'RELAY', 'TAMP']);
    const why = {
      code: 'not-made-good',
      text: 'LIFT cannot be made good in W1: short by 30 min',
      shortByMinutes: 30,
    };
    for (const item of found.unplaced) expect(inJson(item.reasons[0])).toEqual(why);
    expect(inJson(found.unplaced[0]!.reasons)).toEqual([why]);
    const fits = fitAll(track());
    expect(inJson(fits.map((fit) => [fit.fits, fit.spareMinutes, fit.reasons[0]]))).toEqual([
      [false, -30, { ...why, text: 'LIFT cannot be made good in W1' }],
      [false, -30, { ...why, text: 'LIFT cannot be made good in W2' }],
    ]);
    // How short it is stands once in a row.
    for (const { reasons } of fits)
      expect(reasons.filter(({ text }) => text.includes('short by 30 min'))).toHaveLength(1);
  });

  it('is all done in the one window that is long enough', () => {
    const one = track(90);
    const found = search(one);
    expect(found.placements.map((each) => [each.activity, each.window])).toEqual([
      ['LIFT', 'W1'],
      ['DIG', 'W1'],
      ['RELAY', 'W1'],
      ['TAMP', 'W1'],
    ]);
    expect(lineFaults(one, found.placements)).toEqual([]);
    expect(found.certificate.proven).toBe(true);
  });

  it('is not begun where lead-in and margin leave too little time', () => {
    const one = track(90, { rules: rules({ leadIn: 10 }) });
    const found = search(one);
    expect(found.placements).toEqual([]);
    expect(found.unplaced[0]!.reasons[0]).toMatchObject({
      code: 'not-made-good',
      shortByMinutes: 10,
    });
    const longer = (by: number): Plan => ({
      ...one,
      windows: one.windows.map((each) => ({ ...each, end: each.end + by * MINUTE })),
    });
    expect(search(longer(9)).placements).toEqual([]);
    expect(search(longer(10)).unplaced).toEqual([]);
  });

  it('goes in a later, longer window and leaves the first for other work', () => {
    const one = track(120);
    const longer: Plan = {
      ...one,
      windows: [one.windows[0]!, window('W2', 10_080, 400, { lines: ['Up'] })],
      activities: [...one.activities, activity('GREASE', 100, { package: 'W9', keyDate: 360 })],
    };
    const found = search(longer);
    expect(found.unplaced).toEqual([]);
    expect(lineFaults(longer, found.placements)).toEqual([]);
    expect(found.placements.map((each) => [each.activity, each.window])).toEqual([
      ['GREASE', 'W1'],
      ['LIFT', 'W2'],
      ['DIG', 'W2'],
      ['RELAY', 'W2'],
      ['TAMP', 'W2'],
    ]);
  });
});
