import { describe, expect, it } from 'vitest';
import { CellEdits } from '../../../components/desk/forms/edits.js';
import { OpenPlan } from '../../../src/plan/open.js';
import { planFromDocument } from '../../../src/tables/index.js';
import { aDocument, tableOf } from '../../helpers/documents.js';

const windows =
  'window,start,end\nN1,2027-05-01 23:00,2027-05-02 05:00\nN2,2027-05-02 23:00,2027-05-03 05:00';
const fixed = (
  work: string,
): { window: string | undefined; columns: string[]; faults: string[] } => {
  const document = aDocument('Fix', {
    windows: tableOf('windows.csv', windows),
    work: tableOf('work.csv', work),
  });
  const open = OpenPlan.of(document);
  const edits = new CellEdits(document, 'work');
  expect(edits.set('activity', 'B', { window: 'N2' })).toBe(true);
  const after = edits.document;
  open.change(edits.change, 'B fixed');
  expect(open.document).toEqual(after);
  open.undo.undo();
  expect(open.document).toEqual(document);
  const { plan, faults } = planFromDocument(after);
  return {
    window: plan.activities.find((activity) => activity.id === 'B')?.window,
    columns: after.tables.work.columns,
    faults: faults.map((fault) => fault.code),
  };
};

describe('a piece of work fixed to a window', () => {
  it('has the window in its row, in a column that the table did not have', () => {
    expect(fixed('activity,minutes\nA,60\nB,60')).toEqual({
      window: 'N2',
      columns: ['activity', 'minutes', 'window'],
      faults: [],
    });
  });

  it('has it in the column that holds the window under another heading', () => {
    expect(fixed('Activity ID,minutes,Possession\nA,60,\nB,60,').window).toBe('N2');
  });
});
