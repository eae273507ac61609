import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { allocate, replan, shortNotice } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { processorMs } from '../../helpers/processor-clock.js';

const options = { seconds: 2, clock: processorMs };

const crane = resource('crane', [{ capacity: 1 }]);
const onCrane = { resources: { crane: 1 } };

describe('replan', () => {
  const document = plan({
    windows: [window('P1', 0, 300), window('P2', 1440, 300), window('P3', 2880, 300)],
    activities: [
      activity('A1', 200, { ...onCrane, package: 'W1' }),
      activity('B1', 200, { ...onCrane, package: 'W2' }),
      activity('B2', 50, { ...onCrane, package: 'W2', after: ['B1'] }),
    ],
    resources: [crane],
  });
  const before = allocate(document, options);

  it('moves nothing when nothing has changed', () => {
    const again = replan(document, before, options);
    expect(again.moved).toEqual([]);
    expect(again.allocation.placements).toEqual(before.placements);
  });

  it('moves only the packages of a withdrawn window and says why', () => {
    const lost = before.placements.find((placement) => placement.activity === 'B1')!.window!;
    const changed = {
      ...document,
      windows: document.windows.map((item) =>
        item.id === lost ? { ...item, status: 'withdrawn' as const } : item,
      ),
    };
    const after = replan(changed, before, options);
    expect(after.packagesMoved).toEqual(['W2']);
    expect(after.moved.find((move) => move.activity === 'B1')!.why).toContain('withdrawn');
    expect(after.allocation.unplaced).toEqual([]);
    expect(verify(changed, { placements: after.allocation.placements })).toEqual([]);
    const where = (all: typeof before) =>
      all.placements.filter((placement) => placement.activity === 'A1');
    expect(where(after.allocation)).toEqual(where(before));
  });

  it('moves another package when a key date can only be met that way', () => {
    const urgent = {
      ...document,
      activities: [
        ...document.activities,
        activity('C1', 250, { ...onCrane, package: 'W3', keyDate: 300 }),
      ],
    };
    const after = replan(urgent, before, options);
    expect(after.allocation.keyDates).toMatchObject([{ package: 'W3', met: true }]);
    expect(after.packagesMoved).toContain('W3');
    expect(after.packagesMoved.length).toBeLessThan(3);
  });
});

describe('shortNotice', () => {
  const document = plan({
    windows: [window('P1', 0, 300), window('P2', 7 * 1440, 300)],
    activities: [
      activity('A1', 200, { ...onCrane }),
      activity('A2', 200, { ...onCrane, after: ['A1'], keyDate: 5 * 1440 }),
    ],
    resources: [crane],
  });
  const before = allocate(document, options);

  it('brings work that is ready into the offered window and tells what the key date gains', () => {
    const offer = shortNotice(document, before, window('N1', 1440, 240), options);
    expect(offer.use).toEqual([
      { activity: 'A2', window: 'N1', from: 1440 * MINUTE, to: 1640 * MINUTE },
    ]);
    expect(offer.keyDates).toMatchObject([
      { metBefore: false, metAfter: true, gainedMinutes: 6 * 1440 },
    ]);
  });

  it('leaves a window unused when nothing fits it', () => {
    const offer = shortNotice(document, before, window('N1', 1440, 150), options);
    expect(offer.use).toEqual([]);
    expect(offer.keyDates[0]!.gainedMinutes).toBe(0);
  });

  it('begins nothing new before there is notice', () => {
    const late = { ...options, now: 1500 * MINUTE };
    expect(shortNotice(document, before, window('N1', 1440, 240), late).use).toEqual([]);
    const offer = shortNotice(document, before, window('N1', 1440, 300), late);
    expect(offer.use[0]!.from).toBe(1500 * MINUTE);
  });
});
