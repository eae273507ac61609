import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { meetingsOf } from '../../../../src/engine/where/meetings.js';
import { wantedByWeek } from '../../../../src/engine/where/wanted.js';
import type { Activity, Placement } from '../../../../src/model/index.js';
import { createRandom } from '../../../../src/planner/random.js';
import { activity, resource } from '../../../helpers/plan-builders.js';

const MINUTE = 60_000;
const place = (name: string, from: number, to: number): Placement => ({
  activity: name,
  window: 'P1',
  from: from * MINUTE,
  to: to * MINUTE,
});

describe('meetingsOf', () => {
  const two = (item: Partial<Activity>, other: Partial<Activity>) =>
    meetingsOf(
      [place('A1', 0, 60), place('A2', 30, 90)],
      [
        { ...activity('A1', 60), extent: { from: 0, to: 500 }, ...item },
        { ...activity('A2', 60), extent: { from: 400, to: 900 }, ...other },
      ],
    );

  it('tells when and where two pieces stand at one place, and what was said of it', () => {
    const common = { from: 30 * MINUTE, to: 60 * MINUTE, extent: { from: 400, to: 500 } };
    expect(two({}, {})).toEqual([{ first: 0, second: 1, kind: 'unsaid', ...common }]);
    expect(two({ occupies: 'shared' }, {})[0]!.kind).toBe('unsaid');
    expect(two({ occupies: 'shared' }, { occupies: 'shared' })[0]!.kind).toBe('shared');
    expect(two({ occupies: 'shared' }, { occupies: 'alone' })[0]!.kind).toBe('alone');
  });

  it('lets pieces that only touch, or stand on other lines, or outside, not meet', () => {
    expect(two({}, { extent: { from: 500, to: 900 } })).toEqual([]);
    expect(two({ lines: ['up'] }, { lines: ['down'] })).toEqual([]);
    expect(two({ place: 'outside' }, {})).toEqual([]);
  });

  it('takes a piece that says no place to be everywhere', () => {
    const { extent: _, ...nowhere } = activity('A2', 60);
    const [found] = meetingsOf(
      [place('A1', 0, 60), place('A2', 30, 90)],
      [{ ...activity('A1', 60), extent: { from: 0, to: 500 } }, nowhere],
    );
    expect(found).toMatchObject({ kind: 'unsaid' });
    expect(found!.extent).toBeUndefined();
  });

  // Second reckoning: each minute and each metre asked on its own.
  it('finds the same pairs as asking every minute and metre, in 200 random plans', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const random = createRandom(seed);
      const activities = Array.from({ length: 6 }, (_, at) => {
        const from = random.below(12);
        return {
          ...activity(`A${at}`, 1),
          lines: [['up'], ['down'], ['up', 'down'], []][random.below(4)]!,
          extent: { from, to: from + 1 + random.below(5) },
        };
      });
      const placements = activities.map(({ id }) => {
        const from = random.below(12);
        return place(id, from, from + 1 + random.below(5));
      });
      const pairs = new Set<string>();
      for (let minute = 0; minute < 20; minute += 1)
        for (let metre = 0; metre < 20; metre += 1)
          for (const line of ['up', 'down', 'other']) {
            const there = activities.flatMap((item, at) =>
              minute * MINUTE >= placements[at]!.from &&
              minute * MINUTE < placements[at]!.to &&
              metre >= item.extent.from &&
              metre < item.extent.to &&
              (item.lines.length === 0 || item.lines.includes(line))
                ? [at]
                : [],
            );
            for (const a of there) for (const b of there) if (a < b) pairs.add(`${a} ${b}`);
          }
      const found = meetingsOf(placements, activities).map(({ first, second }) =>
        [first, second].sort((a, b) => a - b).join(' '),
      );
      expect({ seed, found: found.sort() }).toEqual({ seed, found: [...pairs].sort() });
    }
  });
});

describe('wantedByWeek', () => {
  const zone = 'Europe/London';

  it('names the moment with the least to spare', () => {
    const activities = [
      activity('A1', 60, { resources: { gang: 1 } }),
      activity('A2', 60, { resources: { gang: 1, crane: 2 } }),
    ];
    const found = wantedByWeek(
      [place('A1', 0, 60), place('A2', 30, 90)],
      activities,
      [resource('gang', [{ capacity: 3 }])],
      'Etc/UTC',
    );
    // 1 January 1970 was a Thursday: its week began on Monday, 29 December.
    const week = -3 * 1440 * MINUTE;
    expect(found).toEqual([
      { resource: 'gang', weeks: [{ week, at: 30 * MINUTE, wanted: 2, held: 3 }] },
      { resource: 'crane', weeks: [{ week, at: 30 * MINUTE, wanted: 2, held: null }] },
    ]);
  });

  // Second reckoning: every minute asked on its own, weeks by another calendar library (Temporal).
  it('is as tight as the tightest minute of each week, over both clock changes', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const random = createRandom(seed);
      const change = seed % 2 === 0 ? '2027-03-28T00:00Z' : '2027-10-31T00:00Z';
      const base = Temporal.Instant.from(change).epochMilliseconds - 180 * MINUTE;
      const activities = ['A', 'B', 'C'].map((id) =>
        activity(id, 1, { resources: { gang: 1 + random.below(2) } }),
      );
      const placements = activities.map(({ id }) => {
        const from = random.below(1500);
        return {
          ...place(id, 0, 0),
          from: base + from * MINUTE,
          to: base + (from + 60 + random.below(400)) * MINUTE,
        };
      });
      const held = [1 + random.below(3), random.below(3)];
      const turn = base + random.below(1500) * MINUTE;
      const gang = {
        id: 'gang',
        availability: [{ capacity: held[0]! }, { capacity: held[1]!, from: turn }],
      };
      const [found] = wantedByWeek(placements, activities, [gang], zone);
      const tightest = new Map<number, number>();
      for (let at = base; at < base + 2000 * MINUTE; at += MINUTE) {
        let wanted = 0;
        placements.forEach((placement, i) => {
          if (placement.from <= at && at < placement.to)
            wanted += activities[i]!.resources[0]!.amount;
        });
        if (wanted === 0) continue;
        const day = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);
        const monday = day.toPlainDate().subtract({ days: day.dayOfWeek - 1 });
        const week = monday.toZonedDateTime(zone).epochMilliseconds;
        const spare = held[0]! + (at >= turn ? held[1]! : 0) - wanted;
        tightest.set(week, Math.min(spare, tightest.get(week) ?? Infinity));
      }
      expect({
        seed,
        weeks: found!.weeks.map((week) => [week.week, week.held! - week.wanted]),
      }).toEqual({ seed, weeks: [...tightest] });
    }
  });
});
