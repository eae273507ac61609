// Float of months: what follows outside windows has no end of time of its own, however late it is pushed on.
import { expect, it } from 'vitest';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';

const DAY = 1440;
const document = plan({
  windows: [window('P1', 0, 100), window('P2', 100 * DAY, 100)],
  activities: [
    activity('A1', 40, { keyDate: 130 * DAY }),
    activity('B1', 300, { package: 'W2', after: ['A1'], place: 'outside', keyDate: 101 * DAY }),
  ],
});

it('lets work outside windows follow however late work before it is held', () => {
  const found = allocate(document, { clock: () => 0 });
  // A1 may end with P2, and B1 be over 300 minutes later, long before its date.
  const float = 100 * DAY + 100 - 40;
  expect(found.keyDates.find((date) => date.package === 'W1')).toMatchObject({
    floatMinutes: float,
  });
  expect(verify(document, found)).toEqual([]);
});

it('still finds a float that leaves the work that follows no time up to its date', () => {
  const { placements, keyDates } = allocate(document, { clock: () => 0 });
  const tight = plan({
    ...document,
    activities: document.activities.map((item) =>
      item.id === 'B1' ? { ...item, keyDate: (100 * DAY + 200) * 60_000 } : item,
    ),
  });
  expect(
    verify(tight, { placements, keyDates: keyDates.filter((date) => date.package === 'W1') }).map(
      (fault) => fault.code,
    ),
  ).toContain('key-date-float');
});
