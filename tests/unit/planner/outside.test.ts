import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';

const options = { clock: (): number => 0 };
const DAY = 1440;
const outside = { place: 'outside' as const };

describe('outside work that no inside work waits for', () => {
  const windows = [window('P1', 0, 300)];

  it('is done before the first window where its key date is before it', () => {
    const document = plan({
      windows,
      activities: [activity('O1', 600, { ...outside, keyDate: -2 * DAY })],
    });
    const found = allocate(document, options);
    expect(found.keyDates).toMatchObject([{ met: true }]);
    // As late as the date allows.
    expect(found.placements[0]!.to).toBe(-2 * DAY * MINUTE);
    expect(verify(document, found)).toEqual([]);
  });

  it('is done while its crane is on site, months before the first window', () => {
    const document = plan({
      windows,
      activities: [activity('O1', 600, { ...outside, resources: { crane: 1 } })],
      resources: [resource('crane', [{ capacity: 1, from: -90 * DAY, to: -88 * DAY }])],
    });
    const found = allocate(document, options);
    expect(found.unplaced).toEqual([]);
    expect(verify(document, found)).toEqual([]);
  });

  it('is done while its crane is on site, months after the last window', () => {
    const document = plan({
      windows,
      activities: [activity('O1', 600, { ...outside, resources: { crane: 1 } })],
      resources: [resource('crane', [{ capacity: 1, from: 90 * DAY, to: 92 * DAY }])],
    });
    const found = allocate(document, options);
    expect(found.placements).toMatchObject([{ from: 90 * DAY * MINUTE }]);
    expect(verify(document, found)).toEqual([]);
  });

  it('begins with the first window where nothing asks for more, a chain in its order', () => {
    const document = plan({
      windows,
      activities: [
        activity('O1', 60, outside),
        activity('O2', 60, { ...outside, after: ['O1'] }),
        activity('O3', 60, { ...outside, keyDate: -DAY }),
        activity('A1', 200, {}),
      ],
    });
    const found = allocate(document, options);
    const from = (id: string): number =>
      found.placements.find((placement) => placement.activity === id)!.from / MINUTE;
    expect([from('O1'), from('O2'), from('O3')]).toEqual([0, 60, -DAY - 60]);
    expect(found.keyDates.every((date) => date.met)).toBe(true);
  });
});
