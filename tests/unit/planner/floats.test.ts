import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';

const floatsOf = (document: Plan): object[] =>
  allocate(document, { clock: (): number => 0 }).floats.map((float) => ({
    id: float.activity,
    latest: [float.latestStart / MINUTE, float.latestFinish / MINUTE],
    total: float.totalFloatMinutes,
    free: float.freeFloatMinutes,
  }));

describe('total float', () => {
  it('is not held by what waits for the start and can move on with it', () => {
    // Both can be moved to the end of the window.
    const document = plan({
      windows: [window('P1', 0, 600)],
      activities: [activity('A1', 190), activity('A2', 40, { after: ['start of A1'] })],
    });
    expect(floatsOf(document)).toEqual([
      { id: 'A1', latest: [410, 600], total: 410, free: 0 },
      { id: 'A2', latest: [560, 600], total: 560, free: 560 },
    ]);
  });

  it('parts latest start and earliest start too (TF = LS - ES, as in any textbook on the critical path)', () => {
    // One after the other, either last: moved by itself, each can end with the window.
    const document = plan({
      windows: [window('P1', 0, 600)],
      activities: [
        activity('A1', 60, { lines: ['Up'], occupies: 'alone' }),
        activity('A2', 180, { lines: ['Up'], occupies: 'alone' }),
      ],
    });
    const [first, second] = allocate(document, { clock: (): number => 0 }).floats;
    for (const float of [first!, second!]) {
      expect(float.latestFinish).toBe(600 * MINUTE);
      expect((float.latestStart - float.earliestStart) / MINUTE).toBe(float.totalFloatMinutes);
    }
  });
});
