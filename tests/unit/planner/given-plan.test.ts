import { describe, expect, it } from 'vitest';
import { planFromDocument } from '../../../src/tables/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { givenPlan } from '../../../src/planner/given/given-plan.js';
import { planId } from '../../../src/planner/plan-id.js';
import type { Plan } from '../../../src/model/index.js';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';
import { at } from '../../helpers/clock.js';
import { aDocument, tableOf } from '../../helpers/documents.js';
import { processorMs } from '../../helpers/processor-clock.js';

const windows = (more = ''): string =>
  `window,start,end,status\nN1,2027-05-01 23:00,2027-05-02 05:00,confirmed\nN2,2027-05-02 23:00,2027-05-03 05:00,${more || 'confirmed'}`;
const work = (done = 0): string =>
  `activity,minutes,units,done,minutes per unit,after,key date\nA,60,,,,,\nB,,10,${done},30,A,2027-05-03`;

function planOf(status = '', done = 0): Plan {
  return planFromDocument(
    aDocument('Given', {
      windows: tableOf('windows.csv', windows(status)),
      work: tableOf('work.csv', work(done)),
    }),
  ).plan;
}

const made = [
  { activity: 'A', window: 'N1', from: at('2027-05-01T23:00'), to: at('2027-05-02T00:00') },
  {
    activity: 'B',
    window: 'N1',
    from: at('2027-05-02T00:00'),
    to: at('2027-05-02T02:00'),
    units: 4,
  },
  {
    activity: 'B',
    window: 'N2',
    from: at('2027-05-02T23:00'),
    to: at('2027-05-03T02:00'),
    units: 6,
  },
];

describe('a plan that was made before', () => {
  it('holds, with forecast and id, where nothing changed', () => {
    const found = givenPlan(planOf(), made);
    expect(found.broken).toEqual([]);
    expect(found.id).toBe(planId(made));
    expect(found.allocation.placements).toEqual(made);
    expect(found.allocation.certificate.holds).toBe(true);
    expect(found.allocation.keyDates[0]!.forecast).toBe(at('2027-05-03T02:00'));
    expect(found.allocation.unplaced).toEqual([]);
  });

  it('calls nothing short that it leaves out though there is room for it', () => {
    const { plan } = planFromDocument(
      aDocument('Left out', {
        windows: tableOf('windows.csv', windows()),
        work: tableOf(
          'work.csv',
          'activity,minutes,after,made good by,window\nCUT,60,,WELD,\nWELD,60,CUT,none,\nCLIPS,60,,none,\nLONG,600,,none,',
        ),
      }),
    );
    const told = (placements: Parameters<typeof givenPlan>[1]): Record<string, string[]> =>
      Object.fromEntries(
        givenPlan(plan, placements).allocation.unplaced.map((item) => [
          item.activity,
          item.reasons.map((each) => `${each.code} ${each.shortByMinutes ?? ''}: ${each.text}`),
        ]),
      );
    const found = told([]);
    const room = (who: string, it: string): string =>
      `room-left : there is room for ${who} in N1 as the plan stands, and the plan does not place ${it}`;
    expect(found['CLIPS']).toEqual([room('CLIPS', 'it')]);
    expect(found['CUT']).toEqual([room('CUT and WELD', 'them')]);
    expect(found['WELD']![0]).toBe(room('CUT and WELD', 'them'));
    // What is too long for any window is short as before.
    expect(found['LONG']!.join()).toContain('needs 10 h in one go');
  });

  it('says which work lies in a window that was withdrawn, moves nothing and promises nothing', () => {
    const found = givenPlan(planOf('withdrawn'), made);
    expect(found.broken).toMatchObject([
      { activity: 'B', code: 'withdrawn', text: 'B is in N2, which is withdrawn' },
    ]);
    expect(found.id).toBe(planId(made));
    expect(found.allocation.placements).toEqual(made.slice(0, 2));
    expect(found.allocation.unplaced.map((item) => item.activity)).toEqual(['B']);
    expect(found.allocation.keyDates[0]!.met).toBe(false);
    expect(found.allocation.certificate).toMatchObject({ proven: false, verified: false });
  });

  it('takes the first units as those that are in place', () => {
    const found = givenPlan(planOf('', 4), made);
    expect(found.allocation.placements.map((placement) => placement.units)).toEqual([undefined, 6]);
    expect(found.broken.map((item) => item.code)).toEqual(['already-done']);
    expect(found.allocation.unplaced).toEqual([]);
  });

  it('says what is not in the plan any more', () => {
    const { broken } = givenPlan(planOf(), [
      { activity: 'X', window: 'N1', from: 0, to: 60_000 },
      { activity: 'A', window: 'N9', from: 0, to: 3_600_000 },
    ]);
    expect(broken.map((item) => item.code)).toEqual(['activity-gone', 'window-gone']);
  });

  it('has the dates, floats and leftovers that the search told of its own plan', async () => {
    const { document } = await importFiles(sampleFiles(), emptyDocument);
    const { plan } = planFromDocument(document);
    const found = allocate(plan, { seconds: 1, clock: processorMs });
    const { allocation, broken } = givenPlan(plan, found.placements);
    expect(broken).toEqual([]);
    expect(allocation.keyDates).toEqual(found.keyDates);
    expect(allocation.floats).toEqual(found.floats);
    expect(allocation.unplaced).toEqual(found.unplaced);
    expect(allocation.finishesAt).toBe(found.finishesAt);
    expect(allocation.windowsUsed).toBe(found.windowsUsed);
    expect(allocation.certificate.objective).toBe(found.certificate.objective);
  });
});
