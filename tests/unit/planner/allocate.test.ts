import { describe, expect, it } from 'vitest';
import { instantOf, isoText, MINUTE } from '../../../src/calendar/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, rules, window } from '../../helpers/plan-builders.js';
import { processorMs } from '../../helpers/processor-clock.js';

const options = { seconds: 1, clock: processorMs };
const crane = resource('crane', [{ capacity: 1 }]);
const onCrane = { resources: { crane: 1 } };

describe('allocate', () => {
  it('packs equal windows with the fewest and proves it', () => {
    const document = plan({
      windows: Array.from({ length: 6 }, (_, i) => window(`P${i + 1}`, i * 1440, 100)),
      activities: [60, 50, 50, 40, 30, 30, 20, 20].map((minutes, i) =>
        activity(`A${i + 1}`, minutes, onCrane),
      ),
      resources: [crane],
    });
    const found = allocate(document, { ...options, first: 'fewest-windows' });
    expect(found.windowsUsed).toBe(3);
    expect(found.certificate).toMatchObject({
      proven: true,
      lowerBound: 3,
      objective: 3,
      holds: true,
    });
    expect(verify(document, { placements: found.placements })).toEqual([]);
  });

  it('fills one window with the shortest project', () => {
    const document = plan({
      windows: [window('P1', 0, 600)],
      activities: [
        activity('A1', 60, onCrane),
        activity('A2', 60, onCrane),
        activity('A3', 90, { after: ['A1 + 30'] }),
      ],
      resources: [crane],
    });
    const found = allocate(document, { ...options, first: 'finish' });
    expect(found.certificate).toMatchObject({ objective: 180, proven: true, holds: true });
  });

  it('holds rigging outside back until the work that waits for it begins', () => {
    const zone = 'Europe/London';
    const at = (day: number, hour: number): number =>
      instantOf({ year: 2027, month: 3, day, hour, minute: 0 }, zone, 'reject');
    const document = plan({
      zone,
      windows: [{ ...window('P1', 0, 0), zone, start: at(27, 22), end: at(28, 9) }],
      activities: [
        activity('R1', 120, { place: 'outside' }),
        {
          ...activity('A1', 120, { after: ['R1'] }),
          notBefore:
            instantOf({ year: 2027, month: 3, day: 28, hour: 0, minute: 59 }, zone, 'reject') +
            MINUTE,
        },
      ],
    });
    const found = allocate(document, options);
    // 23:00 and two hours on the night clocks go forward: the next minute is 02:00 in summer time.
    expect(found.placements.map((placement) => isoText(placement.from, zone))).toEqual([
      '2027-03-27T23:00:00+00:00',
      '2027-03-28T02:00:00+01:00',
    ]);
  });

  it('spreads repeated work over windows and waits for its last unit', () => {
    const document = plan({
      windows: [window('P1', 0, 150), window('P2', 1440, 150), window('P3', 2880, 150)],
      activities: [
        activity('A1', 0, { units: [5, 30, 20, 10], done: 2 }),
        activity('A2', 60, { after: ['A1'] }),
      ],
    });
    const found = allocate(document, options);
    expect(
      found.placements.map((placement) => [
        placement.activity,
        placement.window,
        placement.units,
        (placement.to - placement.from) / MINUTE,
      ]),
    ).toEqual([
      ['A1', 'P1', 4, 150],
      ['A1', 'P2', 1, 60],
      ['A2', 'P2', undefined, 60],
    ]);
  });

  it('says why work is left out and what the shortest extension would be', () => {
    const document = plan({
      windows: [window('P1', 0, 100), window('P2', 1440, 120, { lines: ['up'] })],
      activities: [
        activity('A1', 150),
        activity('A2', 30, { after: ['A1'] }),
        activity('A3', 30, { isolation: ['S9'] }),
      ],
    });
    const found = allocate(document, options);
    const reasons = Object.fromEntries(
      found.unplaced.map((item) => [item.activity, item.reasons.map((reason) => reason.code)]),
    );
    expect(reasons).toEqual({
      A1: ['no-usable-stretch', 'too-short'],
      A2: ['waits-for'],
      A3: ['isolation-not-booked'],
    });
    expect(found.unplaced[0]!.reasons[1]!.shortByMinutes).toBe(30);
    expect(found.certificate).toMatchObject({ mostPlaced: true, text: 'nothing is placed' });
  });

  it('forecasts key dates with float in minutes and windows', () => {
    const document = plan({
      windows: [window('P1', 0, 100), window('P2', 1440, 100), window('P3', 2880, 100)],
      activities: [activity('A1', 80, { keyDate: 4000 }), activity('A2', 10, { package: 'W2' })],
    });
    expect(allocate(document, options).keyDates).toEqual([
      {
        package: 'W1',
        due: 4000 * MINUTE,
        forecast: 80 * MINUTE,
        floatMinutes: 2900,
        floatWindows: 2,
        met: true,
        sharesFloatWith: [],
      },
    ]);
  });

  it('keeps placements that are to stay and refuses ones that mean nothing', () => {
    const document = plan({
      windows: [window('P1', 0, 300)],
      activities: [activity('A1', 60, onCrane), activity('A2', 60, onCrane)],
      resources: [crane],
    });
    const keep = [{ activity: 'A2', window: 'P1', from: 30 * MINUTE, to: 90 * MINUTE }];
    const found = allocate(document, { ...options, keep });
    expect(found.placements).toContainEqual(keep[0]);
    expect(found.placements.find((placement) => placement.activity === 'A1')!.from).toBe(
      90 * MINUTE,
    );
    expect(() =>
      allocate(document, { ...options, keep: [{ ...keep[0]!, activity: 'Z' }] }),
    ).toThrow(RangeError);
  });

  it('answers a plan without windows, without work, and one whose work waits for itself', () => {
    expect(allocate(plan(), options)).toMatchObject({
      placements: [],
      unplaced: [],
      finishesAt: null,
    });
    expect(allocate(plan({ activities: [activity('A1', 10)] }), options).unplaced).toHaveLength(1);
    const ring = plan({
      windows: [window('P1', 0, 100)],
      activities: [activity('A1', 10, { after: ['A2'] }), activity('A2', 10, { after: ['A1'] })],
    });
    expect(allocate(ring, options).unplaced.map((item) => item.reasons[0]!.code)).toEqual([
      'waits-for-itself',
      'waits-for-itself',
    ]);
  });

  it('gives the same answer for the same seed', () => {
    const document = plan({
      windows: Array.from({ length: 5 }, (_, i) => window(`P${i}`, i * 1440, 200 + 10 * i)),
      activities: Array.from({ length: 20 }, (_, i) =>
        activity(`A${i}`, 20 + ((i * 37) % 50), {
          ...onCrane,
          ...(i > 4 ? { after: [`A${i - 4}`] } : {}),
        }),
      ),
      resources: [crane],
    });
    // Time is counted in looks at the clock, so that both searches are equally long.
    const run = () => {
      let looks = 0;
      return allocate(document, { seconds: 1, seed: 7, clock: () => (looks += 1) });
    };
    expect(run()).toEqual(run());
  });
});

describe('floats', () => {
  it('counts float against the latest clear time of the window, with the links and the crane held', () => {
    const document = plan({
      windows: [window('P1', 0, 300)],
      activities: [
        activity('A1', 60, onCrane),
        activity('A2', 90, { ...onCrane, after: ['A1'] }),
        activity('A3', 30, { after: ['A1'] }),
      ],
      resources: [crane],
      rules: rules({ leadOut: 20, margin: 30 }),
    });
    const floats = allocate(document, options).floats.map((float) => [
      float.activity,
      float.earliestStart / MINUTE,
      float.latestStart / MINUTE,
      float.totalFloatMinutes,
      float.freeFloatMinutes,
      float.floatIs,
    ]);
    expect(floats).toEqual([
      ['A1', 0, 100, 100, 0, 'clock'],
      ['A2', 60, 160, 100, 100, 'clock'],
      ['A3', 60, 220, 160, 160, 'clock'],
    ]);
  });

  it('leaves no float where a key date binds and counts working minutes across a curfew', () => {
    const document = plan({
      windows: [window('P1', 0, 480)],
      activities: [
        activity('A1', 60, { keyDate: 60 }),
        activity('A2', 60, { loud: true, package: 'W2' }),
      ],
      rules: rules({ curfews: [{ name: 'Quiet', bars: 'loud', from: '02:00', to: '04:00' }] }),
    });
    expect(allocate(document, options).floats).toMatchObject([
      { activity: 'A1', totalFloatMinutes: 0, critical: true },
      { activity: 'A2', totalFloatMinutes: 300, floatIs: 'working', critical: false },
    ]);
  });
});
