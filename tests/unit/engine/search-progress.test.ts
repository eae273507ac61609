import { expect, it } from 'vitest';
import { createInlineEngine } from '../../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../../helpers/documents.js';

// Making up the answer so far asks in its turn whether to stop, which is where progress is told.
it('tells of a better plan on the way without asking itself for it again', async () => {
  const plan = aDocument(
    'Two nights',
    {
      windows: tableOf(
        'windows.csv',
        'window,start,end,status\nW1,2027-03-02 23:00,2027-03-03 05:00,confirmed\nW2,2027-03-09 23:00,2027-03-10 05:00,confirmed',
      ),
      work: tableOf(
        'work.csv',
        'package,activity,title,after,minutes\nDeck,D1,Cut out,,200\nDeck,D2,Lift in,D1,200',
      ),
    },
    { rules: stepRules() },
  );
  const engine = createInlineEngine();
  let told = 0;
  const found = await engine.allocate(plan, {}, undefined, ({ best }) => {
    if (best) told += 1;
  });
  expect(found.placements).toHaveLength(2);
  expect(told).toBeGreaterThan(0);
  expect(found).toEqual(await engine.allocate(plan, {}));
});
