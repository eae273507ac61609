// Rows of a package with one date are one key date: what it has already missed holds back nothing but more of it.
import { describe, expect, it } from 'vitest';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';

describe('float before a key date that is missed as it stands', () => {
  const document = plan({
    windows: [window('P1', 0, 100), window('P2', 1440, 100), window('P3', 2880, 100)],
    activities: [
      activity('A1', 40, { keyDate: 2000 }),
      activity('B1', 40, { package: 'W2', after: ['A1'], keyDate: 1000 }),
      activity('B2', 40, { package: 'W2', window: 'P3', keyDate: 1000 }),
    ],
  });
  const found = allocate(document, { clock: () => 0 });

  it('lets work of the late package move up to what is last of it', () => {
    // A1 may end with P2, at 1540: B1 then goes to P3, and W2 is as late as before.
    expect(found.keyDates).toMatchObject([
      { package: 'W1', floatMinutes: 1500, met: true },
      { package: 'W2', floatMinutes: -1920, met: false },
    ]);
    expect(verify(document, found)).toEqual([]);
  });

  it('finds a float that makes the late package later', () => {
    const later = plan({
      ...document,
      windows: [...document.windows, window('P4', 4320, 100)],
      activities: document.activities.map((item) =>
        item.id === 'A1' ? { ...item, keyDate: 5000 * 60_000 } : item,
      ),
    });
    const { placements, keyDates } = allocate(later, { clock: () => 0 });
    const claim = (floatMinutes: number) =>
      verify(later, {
        placements,
        keyDates: keyDates.map((date) =>
          date.package === 'W1' ? { ...date, floatMinutes } : date,
        ),
      }).map((fault) => fault.code);
    expect(claim(keyDates.find((date) => date.package === 'W1')!.floatMinutes!)).toEqual([]);
    // A1 would be over in P3 at 2920, B1 behind it there at 2960, and W2 is planned to end at 2920.
    expect(claim(2880)).toEqual(['key-date-float']);
  });
});
