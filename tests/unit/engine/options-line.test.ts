import { describe, expect, it } from 'vitest';
import { applyEdit, editBetween } from '../../../src/edits/index.js';
import { english } from '../../../src/engine/english/say.js';
import { createInlineEngine } from '../../../src/engine/index.js';
import { sitePlan } from '../../../src/engine/site/site-plan.js';
import { at } from '../../helpers/clock.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../../helpers/documents.js';
import { lineFaults } from '../../helpers/line-check.js';

// Track is lifted out in units, relaid and tamped in the same night; beside it units that anybody may leave.
const document = aDocument(
  'Line',
  {
    windows: tableOf(
      'windows.csv',
      `window,start,end,lines,isolation,status
W1,2027-05-04 23:00,2027-05-05 07:00,Up,,confirmed
W2,2027-05-11 23:00,2027-05-12 07:00,Up,,confirmed`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,after,minutes,units,minutes per unit,lines,isolation,made good by,occupies,window
T,LIFT,Lift out,,60,,,Up,,TAMP,shared,W1
T,RELAY,Relay,LIFT,,4,30,Up,,,shared,W1
T,TAMP,Tamp and test,RELAY,60,,,Up,,,shared,W1
F,CLIPS,Renew clips,,,6,30,Up,,none,shared,W1`,
    ),
  },
  { rules: stepRules(), prices: minuteBook },
);

describe('the options of a window in which the line is opened', () => {
  it('leave nothing open that was opened, each in its own plan, by a check that shares no code', async () => {
    const engine = createInlineEngine();
    const allocation = await engine.allocate(document, { effort: 0.05 });
    expect(allocation.unplaced).toEqual([]);
    const { options } = await engine.options(document, {
      window: 'W1',
      seed: 3,
      runs: 500,
      effortPerOption: 0.05,
      allocation,
    });
    const priced = options.flatMap((option) => (option.state === 'priced' ? [option] : []));
    expect(priced.length).toBeGreaterThan(1);
    for (const option of priced) {
      const then = option.edit ? applyEdit(document, option.edit) : document;
      expect([option.id, ...lineFaults(sitePlan(then).plan, option.placements)]).toEqual([
        option.id,
      ]);
    }
    // The night cannot be parted so: the lift would be made good in another window.
    const split = options.find((option) => option.id === 'split')!;
    expect(split.state).toBe('infeasible');
    expect(split.state === 'infeasible' && english(split.reason)).toContain(
      'TAMP could not be planned so',
    );
  });

  it('refuses one that would leave the line open, and says what is missing', async () => {
    const engine = createInlineEngine();
    const allocation = await engine.allocate(document, { effort: 0.05 });
    const work = document.tables.work;
    const at = work.columns.indexOf('window');
    const rows = work.rows.map((row) => (row[1] === 'TAMP' ? row.with(at, 'W2') : row));
    const parted = { ...document, tables: { ...document.tables, work: { ...work, rows } } };
    const { options } = await engine.options(document, {
      window: 'W1',
      seed: 3,
      runs: 200,
      effortPerOption: 0.05,
      allocation,
      own: [{ name: 'Tamp later', edit: editBetween(document, parted, 'Tamp later') }],
    });
    const own = options.find((option) => option.id === 'own 1')!;
    expect(own.state).toBe('infeasible');
    expect(own.state === 'infeasible' && english(own.reason)).toContain(
      'made good in its own window',
    );
  });

  it('keeps the place of work that stays alone in a window beside it, and frees what was fixed', async () => {
    const engine = createInlineEngine();
    // W2 begins while W1 still runs; LIFT is alone there until 03:30. What leaves W1 may not go beside it.
    const beside = aDocument(
      'Beside',
      {
        windows: tableOf(
          'windows.csv',
          `window,start,end,lines,isolation,status
W1,2027-05-04 23:00,2027-05-05 02:30,,,confirmed
W2,2027-05-05 00:00,2027-05-05 04:20,,,confirmed
W3,2027-05-05 02:30,2027-05-05 05:20,,,confirmed`,
        ),
        work: tableOf(
          'work.csv',
          `package,activity,minutes,lines,isolation,made good by,occupies,window
T,LIFT,180,,,none,alone,W2
F,CLIPS,60,,,none,shared,W1`,
        ),
      },
      { rules: stepRules({ margin: { minutes: 0 } }), prices: minuteBook },
    );
    const [lift, clips] = [
      {
        activity: 'LIFT',
        window: 'W2',
        from: at('2027-05-05 00:30'),
        to: at('2027-05-05 03:30'),
      },
      {
        activity: 'CLIPS',
        window: 'W1',
        from: at('2027-05-04 23:20'),
        to: at('2027-05-05 00:20'),
      },
    ];
    const allocation = {
      ...(await engine.allocate(beside, { effort: 0.05 })),
      placements: [clips, lift],
      unplaced: [],
    };
    const { options } = await engine.options(beside, {
      ...{ window: 'W1', seed: 3, runs: 20, effortPerOption: 0.05, allocation },
      own: [{ name: 'Clips later', wish: { leaveOut: [{ activity: 'CLIPS', units: 1 }] } }],
    });
    const own = options.find((option) => option.id === 'own 1')!;
    expect(
      own.state === 'priced' && own.placements.find((placement) => placement.activity === 'CLIPS'),
    ).toEqual({
      activity: 'CLIPS',
      window: 'W3',
      from: at('2027-05-05 03:30'),
      to: at('2027-05-05 04:30'),
    });
    expect(own.state === 'priced' && own.faults).toEqual([]);
    expect(own.state === 'priced' && own.changes.map(english)).toContain(
      'CLIPS is not fixed to W1 any more.',
    );
  });
});
