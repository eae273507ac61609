// Each rule of the verifier at the minute at which it begins to hold and the one before. Plans are given outright, so
// that nothing here rests on the search. 1970-01-01, minute 0, was a Thursday.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Placement } from '../../../src/planner/fit/index.js';
import type { Activity, Curfew, CuringData, Plan } from '../../../src/model/index.js';
import { english } from '../../../src/engine/english/say.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, rules, window } from '../../helpers/plan-builders.js';

const HOUR = 60;
const DAY = 1440;

/** A placement by minutes; its window is W unless it says otherwise. */
const put = (
  id: string,
  from: number,
  to: number,
  more: { window?: string | null; units?: number } = {},
): Placement => ({
  activity: id,
  window: more.window === undefined ? 'W' : more.window,
  from: from * MINUTE,
  to: to * MINUTE,
  ...(more.units !== undefined && { units: more.units }),
});
const outside = { window: null };
const told = (parts: Partial<Plan>, placements: readonly Placement[]): string[] =>
  verify(plan(parts), { placements }).map((fault) => `${fault.activity} ${fault.code}`);

const texts = (parts: Partial<Plan>, placements: readonly Placement[]): string[] =>
  verify(plan(parts), { placements }).map(({ text }) => english(text));

/** A window of the first twenty days in which nothing is barred, so that one rule is looked at alone. */
const open = window('W', 0, 20 * DAY);
const one = (work: Activity, ...placements: readonly Placement[]): string[] =>
  told({ windows: [open], activities: [work] }, placements);

describe('the amount of work', () => {
  it('is the minutes it takes, to the minute', () => {
    const work = activity('A', 60);
    expect(one(work, put('A', 0, 60))).toEqual([]);
    expect(one(work, put('A', 0, 59))).toEqual(['A minutes']);
    expect(one(work, put('A', 0, 61))).toEqual(['A minutes']);
    expect(one(work, { ...put('A', 0, 60), to: 60 * MINUTE + 1 })).toEqual(['A minutes']);
    expect(texts({ windows: [open], activities: [work] }, [put('A', 0, 59)])).toEqual([
      'A is given 59 minutes and takes 60',
    ]);
    // It may begin between two minutes.
    const late = put('A', 0, 60);
    expect(one(work, { ...late, from: late.from + 15_000, to: late.to + 15_000 })).toEqual([]);
  });

  it('of units is setting up, each unit and making safe, in whole units, no more than are left', () => {
    const work = activity('A', 0, { units: [3, 40, 20, 10], done: 2 });
    expect(one(work, put('A', 0, 70, { units: 1 }), put('A', 100, 210, { units: 2 }))).toEqual([]);
    expect(one(work, put('A', 0, 150, { units: 3 }))).toEqual([]);
    expect(one(work, put('A', 0, 190, { units: 4 }))).toEqual(['A units']);
    expect(one(work, put('A', 0, 151, { units: 3 }))).toEqual(['A minutes']);
    expect(one(work, put('A', 0, 30, { units: 0 }))).toEqual(['A units']);
    expect(one(work, put('A', 0, 30))).toEqual(['A units']);
    expect(one(work, put('A', 0, 90, { units: 1.5 }))).toEqual(['A units']);
    expect(one(work, put('A', 0, 110, { units: 2 }), put('A', 200, 310, { units: 2 }))).toEqual([
      'A units',
    ]);
  });

  it('is given in one piece unless it is counted in units', () => {
    expect(one(activity('A', 60), put('A', 0, 60), put('A', 100, 160))).toEqual(['A split']);
  });

  it('has no two visits at once; those that touch are two', () => {
    const work = activity('A', 0, { units: [4, 30, 0, 0] });
    const two = { units: 2 };
    expect(one(work, put('A', 60, 120, two), put('A', 0, 60, two))).toEqual([]);
    expect(one(work, put('A', 59, 119, two), put('A', 0, 60, two))).toEqual(['A overlap']);
    expect(one(work, put('A', 0, 60, two), put('A', 0, 60, two))).toEqual(['A overlap']);
  });

  it('is none where nothing is left', () => {
    const work = activity('A', 0, { units: [0, 30, 5, 5], done: 4 });
    expect(one(work, put('A', 0, 40, { units: 1 }))).toEqual(['A already-done', 'A units']);
  });
});

describe('when work may begin', () => {
  it('is the moment it says', () => {
    const work = activity('A', 60, { notBefore: 100 });
    expect(one(work, put('A', 100, 160))).toEqual([]);
    expect(one(work, put('A', 99, 159))).toEqual(['A not-before']);
  });
});

describe('where work may be', () => {
  it('is a window for inside work and none for outside work', () => {
    expect(one(activity('A', 60), put('A', 0, 60, outside))).toEqual(['A place']);
    const out = activity('A', 60, { place: 'outside' });
    expect(one(out, put('A', 0, 60, outside))).toEqual([]);
    expect(one(out, put('A', 0, 60))).toEqual(['A place']);
  });

  it('is a window of the plan that is not withdrawn, and the one it is fixed in', () => {
    const windows = [open, window('V', 0, DAY, { status: 'withdrawn' }), window('X', 0, DAY)];
    const parts = { windows, activities: [activity('A', 60)] };
    expect(told(parts, [put('A', 0, 60, { window: 'X' })])).toEqual([]);
    expect(told(parts, [put('A', 0, 60, { window: 'V' })])).toEqual(['A withdrawn']);
    expect(told(parts, [put('A', 0, 60, { window: 'Y' })])).toEqual(['A unknown-window']);
    const fixed = { windows, activities: [activity('A', 60, { window: 'X' })] };
    expect(told(fixed, [put('A', 0, 60, { window: 'X' })])).toEqual([]);
    expect(told(fixed, [put('A', 0, 60)])).toEqual(['A fixed-elsewhere']);
  });

  it('has every line it needs blocked; a window that names none blocks them all', () => {
    const windows = [
      window('W', 0, DAY, { lines: ['up'] }),
      window('X', 0, DAY, { lines: ['up', 'down'] }),
      window('Y', 0, DAY),
    ];
    const parts = { windows, activities: [activity('A', 60, { lines: ['down', 'up'] })] };
    expect(told(parts, [put('A', 0, 60)])).toEqual(['A line']);
    expect(told(parts, [put('A', 0, 60, { window: 'X' })])).toEqual([]);
    expect(told(parts, [put('A', 0, 60, { window: 'Y' })])).toEqual([]);
  });

  it('lies within the extent of the window, its ends counted', () => {
    const at = (from: number, to: number, extent?: readonly [number, number]): string[] =>
      told(
        {
          windows: [window('W', 0, DAY, extent && { extent })],
          activities: [activity('A', 60, { extent: [from, to] })],
        },
        [put('A', 0, 60)],
      );
    expect(at(100, 200, [100, 200])).toEqual([]);
    expect(at(99, 200, [100, 200])).toEqual(['A extent']);
    expect(at(100, 201, [100, 200])).toEqual(['A extent']);
    expect(at(0, 900)).toEqual([]);
    const whole = { windows: [window('W', 0, DAY, { extent: [1, 2] })] };
    expect(told({ ...whole, activities: [activity('A', 60)] }, [put('A', 0, 60)])).toEqual([]);
  });

  it('has every section it needs booked dead', () => {
    const windows = [
      window('W', 0, DAY, { isolation: ['S1'] }),
      window('X', 0, DAY, { isolation: ['S1', 'S2'] }),
    ];
    const parts = { windows, activities: [activity('A', 60, { isolation: ['S1', 'S2'] })] };
    expect(texts(parts, [put('A', 0, 60)])).toContain('A needs S2 dead, which W does not book');
    expect(told(parts, [put('A', 0, 60)]).filter((text) => text === 'A isolation')).toHaveLength(1);
    expect(told(parts, [put('A', 0, 60, { window: 'X' })])).toEqual([]);
  });
});

describe('the usable time of a window', () => {
  // Usable from 30 to 435: lead-in 30, margin 25, lead-out 20.
  const parts = (minutes: number): Partial<Plan> => ({
    windows: [window('W', 0, 480)],
    activities: [activity('A', minutes)],
    rules: rules({ leadIn: 30, leadOut: 20, margin: 25 }),
  });

  it('holds work from its first minute to its last', () => {
    expect(told(parts(405), [put('A', 30, 435)])).toEqual([]);
    expect(told(parts(60), [put('A', 29, 89)])).toEqual(['A lead-in']);
    expect(told(parts(60), [put('A', 376, 436)])).toHaveLength(1);
    expect(told(parts(406), [put('A', 29, 435)])).toEqual(['A lead-in']);
  });

  it('is told from what stands outside the window, on either side', () => {
    expect(told(parts(60), [put('A', -1, 59)])).toEqual(['A outside-window', 'A lead-in']);
    expect(told(parts(60), [put('A', 421, 481)])).toContain('A outside-window');
    expect(told(parts(60), [put('A', 420, 480)])).not.toContain('A outside-window');
    expect(told(parts(60), [put('A', 600, 660)])).toEqual(['A outside-window']);
  });

  it('is told where no row of the ledger says why', () => {
    expect(told(parts(0), [put('A', 10, 10)])).toEqual(['A lead-in']);
    expect(told(parts(0), [put('A', 30, 30)])).toEqual([]);
    expect(told(parts(0), [put('A', 0, 0)])).toEqual(['A not-usable']);
    expect(told(parts(0), [put('A', 500, 500)])).toEqual(['A outside-window']);
  });

  it('is that of its own window and its own needs', () => {
    const quiet: Curfew = { name: 'Quiet', bars: 'loud', from: '00:00', to: '02:00' };
    const both = {
      windows: [window('W', 0, 480), window('X', 60, 480)],
      activities: [activity('A', 60), activity('B', 60, { loud: true })],
      rules: rules({ leadIn: 30, curfews: [quiet] }),
    };
    expect(told(both, [put('A', 30, 90), put('B', 120, 180)])).toEqual([]);
    expect(told(both, [put('A', 30, 90), put('B', 119, 179)])).toEqual(['B curfew']);
    expect(told(both, [put('A', 60, 120, { window: 'X' }), put('B', 120, 180)])).toEqual([
      'A lead-in',
    ]);
  });
});

describe('outside work in a curfew', () => {
  const at = (curfew: Curfew, from: number, to: number, loud = false): string[] =>
    told(
      {
        activities: [activity('A', to - from, { place: 'outside', loud })],
        rules: rules({ curfews: [curfew] }),
      },
      [put('A', from, to, outside)],
    );
  const all = (from: string, to: string, days?: Curfew['days']): Curfew => ({
    name: 'Quiet',
    bars: 'all',
    from,
    to,
    ...(days && { days }),
  });

  it('is barred from its first minute to its last', () => {
    const quiet = all('01:15', '02:30');
    expect(at(quiet, 15, 75)).toEqual([]);
    expect(at(quiet, 16, 76)).toEqual(['A curfew']);
    expect(at(quiet, 149, 200)).toEqual(['A curfew']);
    expect(at(quiet, 150, 200)).toEqual([]);
    expect(at(quiet, 60, 200)).toEqual(['A curfew']);
  });

  it('for loud work only bars loud work only', () => {
    const quiet: Curfew = { ...all('01:00', '02:00'), bars: 'loud' };
    expect(at(quiet, 60, 120)).toEqual([]);
    expect(at(quiet, 60, 120, true)).toEqual(['A curfew']);
    expect(at(all('01:00', '02:00'), 60, 120)).toEqual(['A curfew']);
  });

  it('over midnight belongs to the day it begins', () => {
    const thursday = all('22:30', '02:15', ['thu']);
    expect(at(thursday, 0, 2 * HOUR)).toEqual([]);
    expect(at(thursday, 22 * HOUR, 22 * HOUR + 30)).toEqual([]);
    expect(at(thursday, 22 * HOUR, 22 * HOUR + 31)).toEqual(['A curfew']);
    expect(at(thursday, DAY + 134, DAY + 135)).toEqual(['A curfew']);
    expect(at(thursday, DAY + 135, DAY + 200)).toEqual([]);
    expect(at(thursday, DAY + 22 * HOUR, DAY + 26 * HOUR)).toEqual([]);
    expect(at(all('22:30', '02:15'), DAY, DAY + 1)).toEqual(['A curfew']);
  });

  it('of a Sunday runs into Monday, and one within the day keeps to its days', () => {
    const sunday = all('22:00', '02:00', ['sun']);
    const monday = 4 * DAY;
    expect(at(sunday, monday + 60, monday + 61)).toEqual(['A curfew']);
    expect(at(sunday, monday - 60, monday - 59)).toEqual(['A curfew']);
    expect(at(sunday, monday + 23 * HOUR, monday + 23 * HOUR + 1)).toEqual([]);
    const friday = all('10:00', '11:00', ['fri']);
    expect(at(friday, DAY + 600, DAY + 601)).toEqual(['A curfew']);
    expect(at(friday, 600, 601)).toEqual([]);
  });

  it('that begins when it ends lasts the day round', () => {
    expect(at(all('06:00', '06:00'), 0, 1)).toEqual(['A curfew']);
    expect(at(all('06:00', '06:00'), 700, 701)).toEqual(['A curfew']);
  });
});

describe('what work waits for', () => {
  const link = (after: string, before: Activity, ...placements: readonly Placement[]): string[] =>
    told({ windows: [open], activities: [before, activity('B', 60, { after: [after] })] }, [
      ...placements,
      put('B', 200, 260),
    ]);

  it('has finished, and the gap is over', () => {
    const before = activity('A', 60);
    expect(link('A', before, put('A', 140, 200))).toEqual([]);
    expect(link('A', before, put('A', 141, 201))).toEqual(['B link']);
    expect(link('A + 30', before, put('A', 110, 170))).toEqual([]);
    expect(link('A + 30', before, put('A', 111, 171))).toEqual(['B link']);
    expect(link('A', before)).toEqual(['B link']);
    const parts = (after: string): Partial<Plan> => ({
      windows: [open],
      activities: [before, activity('B', 60, { after: [after] })],
    });
    expect(texts(parts('A + 5'), [put('B', 0, 60)])).toEqual([
      'B begins before the finish of A and 5 minutes',
    ]);
    expect(texts(parts('start of A'), [put('B', 0, 60)])).toEqual([
      'B begins before the start of A and 0 minutes',
    ]);
  });

  it('has begun, where it waits for a start', () => {
    const before = activity('A', 60);
    expect(link('start of A + 30', before, put('A', 170, 230))).toEqual([]);
    expect(link('start of A + 30', before, put('A', 171, 231))).toEqual(['B link']);
    const units = activity('A', 0, { units: [4, 10, 0, 0] });
    const two = { units: 2 };
    expect(link('start of A', units, put('A', 190, 210, two), put('A', 400, 420, two))).toEqual([]);
    expect(link('start of A', units, put('A', 400, 420, two), put('A', 190, 210, two))).toEqual([]);
    expect(link('start of A', units, put('A', 201, 221, two))).toEqual(['B link']);
  });

  it('has all its units in place, the last of its visits over', () => {
    const before = activity('A', 0, { units: [4, 10, 0, 0], done: 3 });
    const two = { units: 2 };
    expect(link('A', before, put('A', 180, 200, two), put('A', 0, 20, two))).toEqual([]);
    expect(link('A', before, put('A', 181, 201, two), put('A', 0, 20, two))).toEqual(['B link']);
    expect(link('A', before, put('A', 0, 20, two))).toEqual(['B link']);
    const three = put('A', 0, 30, { units: 3 });
    expect(link('A', before, three)).toEqual(['B link']);
    expect(link('A', before, three, put('A', 40, 50, { units: 1 }))).toEqual([]);
  });

  it('is nothing, where the other is done or not in the plan', () => {
    expect(link('A', activity('A', 0, { units: [0, 10, 0, 0], done: 3 }))).toEqual([]);
    expect(link('Z', activity('A', 60))).toEqual([]);
  });

  it('counts for the first of its own visits', () => {
    const work = activity('B', 0, { units: [2, 30, 0, 0], after: ['A'] });
    const parts = { windows: [open], activities: [activity('A', 60), work] };
    const visits = (first: number): Placement[] => [
      put('B', 300, 330, { units: 1 }),
      put('B', first, first + 30, { units: 1 }),
      put('A', 0, 60),
    ];
    expect(told(parts, visits(60))).toEqual([]);
    expect(told(parts, visits(59))).toEqual(['B link']);
    // The first to begin, though another ends before it.
    const long = { ...activity('B', 0, { units: [4, 30, 0, 0], after: ['A'] }) };
    const nested = [
      put('B', 70, 100, { units: 1 }),
      put('B', 50, 140, { units: 3 }),
      put('A', 0, 60),
    ];
    expect(told({ ...parts, activities: [activity('A', 60), long] }, nested)).toEqual([
      'B overlap',
      'B link',
    ]);
  });
});

describe('a resource', () => {
  const crane = (amount: number): { resources: Readonly<Record<string, number>> } => ({
    resources: { crane: amount },
  });
  const use = (
    rows: Parameters<typeof resource>[1],
    ...spans: readonly (readonly [from: number, to: number, amount: number])[]
  ): string[] =>
    told(
      {
        windows: [open],
        activities: spans.map(([from, to, amount], i) =>
          activity(`A${i + 1}`, to - from, crane(amount)),
        ),
        resources: [resource('crane', rows), resource('gang', [{ capacity: 0 }])],
      },
      spans.map(([from, to], i) => put(`A${i + 1}`, from, to)),
    );

  it('may be used up, and not by one more', () => {
    expect(use([{ capacity: 2 }], [0, 60, 1], [0, 60, 1])).toEqual([]);
    expect(use([{ capacity: 2 }], [0, 60, 2])).toEqual([]);
    expect(use([{ capacity: 2 }], [0, 60, 3])).toEqual(['A1 resource']);
    expect(use([{ capacity: 2 }], [0, 60, 1], [30, 90, 2])).toEqual(['A1 resource', 'A2 resource']);
    expect(use([], [0, 60, 1])).toEqual(['A1 resource']);
  });

  it('is free again the minute its use ends', () => {
    expect(use([{ capacity: 1 }], [0, 60, 1], [60, 120, 1])).toEqual([]);
    expect(use([{ capacity: 1 }], [60, 120, 1], [0, 61, 1])).toEqual([
      'A2 resource',
      'A1 resource',
    ]);
    expect(use([{ capacity: 1 }], [0, 60, 1], [200, 260, 1], [59, 90, 1])).toEqual([
      'A1 resource',
      'A3 resource',
    ]);
  });

  it('is there from a moment until another, and its rows add up', () => {
    const rows = [{ capacity: 1, from: 100, to: 200 }];
    expect(use(rows, [100, 200, 1])).toEqual([]);
    expect(use(rows, [99, 160, 1])).toEqual(['A1 resource']);
    expect(use(rows, [140, 201, 1])).toEqual(['A1 resource']);
    const two = [...rows, { capacity: 1, from: 150 }, { capacity: 1, to: 120 }];
    expect(use(two, [150, 200, 2])).toEqual([]);
    expect(use(two, [149, 200, 2])).toEqual(['A1 resource']);
    expect(use(two, [100, 120, 2])).toEqual([]);
    expect(use(two, [100, 121, 2])).toEqual(['A1 resource']);
  });

  it('is there for a part of each day, over midnight too', () => {
    const day = [{ capacity: 1, dailyFromMinute: 480, dailyToMinute: 960 }];
    for (const start of [0, DAY]) {
      expect(use(day, [start + 480, start + 960, 1])).toEqual([]);
      expect(use(day, [start + 479, start + 500, 1])).toEqual(['A1 resource']);
      expect(use(day, [start + 900, start + 961, 1])).toEqual(['A1 resource']);
    }
    const night = [{ capacity: 1, dailyFromMinute: 1320, dailyToMinute: 360 }];
    expect(use(night, [1320, DAY + 360, 1])).toEqual([]);
    expect(use(night, [1319, 1400, 1])).toEqual(['A1 resource']);
    expect(use(night, [DAY, DAY + 361, 1])).toEqual(['A1 resource']);
    expect(use([{ capacity: 1, dailyFromMinute: 600 }], [600, DAY, 1])).toEqual([]);
    expect(use([{ capacity: 1, dailyFromMinute: 600 }], [1380, DAY + 1, 1])).toEqual([
      'A1 resource',
    ]);
    expect(use([{ capacity: 1, dailyToMinute: 600 }], [0, 600, 1])).toEqual([]);
    expect(use([{ capacity: 1, dailyToMinute: 600 }], [590, 601, 1])).toEqual(['A1 resource']);
    const mixed = [...day, { capacity: 0, from: 0 }];
    expect(use(mixed, [900, 960, 1])).toEqual([]);
    expect(use(mixed, [900, 961, 1])).toEqual(['A1 resource']);
    const always = [{ capacity: 1, dailyFromMinute: 600, dailyToMinute: 600 }];
    expect(use(always, [0, DAY, 1])).toEqual([]);
  });

  it('is used by all needs of one activity together, and by none that needs none of it', () => {
    const twice: Activity = {
      ...activity('A', 60),
      resources: [
        { resource: 'crane', amount: 1 },
        { resource: 'gang', amount: 5 },
        { resource: 'crane', amount: 1 },
      ],
    };
    const parts = (capacity: number): Partial<Plan> => ({
      windows: [open],
      activities: [twice, activity('B', 60), activity('C', 0, crane(9))],
      resources: [resource('crane', [{ capacity }])],
    });
    expect(told(parts(2), [put('A', 0, 60), put('B', 0, 60), put('C', 0, 0)])).toEqual([]);
    expect(told(parts(1), [put('A', 0, 60), put('B', 0, 60)])).toEqual(['A resource']);
  });
});

describe('time that the site closes', () => {
  const shut = (from: number, to: number) => ({ start: from * MINUTE, end: to * MINUTE });
  const closed = (
    stretches: readonly (readonly [number, number])[],
    daily: readonly Curfew[] = [],
    name = 'wind',
  ) => ({
    name,
    rule: { text: `closed by ${name}` },
    why: { text: 'this test' },
    stretches: stretches.map(([from, to]) => shut(from, to)),
    daily,
  });
  const outsideWork = (heeds: readonly string[]): Activity => ({
    ...activity('A', 60, { place: 'outside' }),
    heeds,
  });
  const at = (
    from: number,
    lists: readonly ReturnType<typeof closed>[],
    heeds: readonly string[] = ['wind'],
  ): string[] =>
    told({ activities: [outsideWork(heeds)], rules: { ...rules(), closed: lists } }, [
      put('A', from, from + 60, outside),
    ]);

  it('says by which rule', () => {
    const rule = closed([[0, 200]]);
    const given = plan({
      activities: [outsideWork(['wind'])],
      rules: { ...rules(), closed: [rule] },
    });
    const [fault] = verify(given, { placements: [put('A', 41, 101, outside)] });
    expect(english(fault!.text)).toBe('A goes on in closed time: closed by wind');
  });

  it('bars what heeds it, from its first minute to its last', () => {
    const lists = [
      closed([
        [0, 10],
        [100, 200],
      ]),
    ];
    expect(at(40, lists)).toEqual([]);
    expect(at(41, lists)).toEqual(['A closed']);
    expect(at(199, lists)).toEqual(['A closed']);
    expect(at(200, lists)).toEqual([]);
    expect(at(120, lists, [])).toEqual([]);
    expect(at(120, lists, ['noise'])).toEqual([]);
    expect(at(120, [closed([[0, 10]]), closed([[120, 121]])])).toEqual(['A closed']);
    expect(at(120, [closed([[120, 121]], [], 'noise')], ['wind', 'noise'])).toEqual(['A closed']);
  });

  it('bars by the bands of each day', () => {
    const lists = [closed([], [{ name: 'Night', bars: 'all', from: '02:00', to: '03:00' }])];
    expect(at(60, lists)).toEqual([]);
    expect(at(61, lists)).toEqual(['A closed']);
    expect(at(179, lists)).toEqual(['A closed']);
    expect(at(180, lists)).toEqual([]);
    const noon: Curfew = { name: 'Noon', bars: 'all', from: '12:00', to: '13:00' };
    const two = [closed([], [...lists[0]!.daily, noon])];
    expect(at(150, two)).toEqual(['A closed']);
    expect(at(720, two)).toEqual(['A closed']);
  });

  it('goes by the clocks of the window that the work is in', () => {
    const night: Curfew = { name: 'Night', bars: 'all', from: '02:00', to: '03:00' };
    const work: Activity = { ...activity('A', 60), heeds: ['wind'] };
    const parts = {
      windows: [open, window('E', 0, DAY, { zone: 'Etc/GMT-5' })],
      activities: [work],
      rules: { ...rules(), closed: [closed([], [night])] },
    };
    // 21:00 UTC is 02:00 five hours to the east.
    const late = 21 * HOUR;
    expect(told(parts, [put('A', late, late + 60, { window: 'E' })])).toContain('A closed');
    expect(told(parts, [put('A', late, late + 60)])).toEqual([]);
    expect(told(parts, [put('A', 120, 180, { window: 'E' })])).toEqual([]);
  });
});

describe('concrete that is to be cured', () => {
  // Temperature-time from 0 °C: at 10 °C an hour adds 10 °C h, so that 100 take 600 minutes.
  const curing = (
    rows: readonly (readonly [from: number, to: number, celsius: number])[],
    otherwiseC?: number,
  ): CuringData => ({
    settings: {
      maturity: 100,
      model: { model: 'temperature-time', datumC: 0 },
      source: 'this test',
      sureness: 'our own',
      ...(otherwiseC !== undefined && { otherwiseC }),
    },
    temperatures: rows.map(([from, to, celsius]) => ({
      start: from * MINUTE,
      end: to * MINUTE,
      celsius,
    })),
  });
  const waits = (gapMinutes = 0): Activity => ({
    ...activity('B', 60),
    after: [{ activity: 'A', from: 'finish', gapMinutes, cured: true }],
  });
  const at = (
    data: CuringData | undefined,
    from: number,
    more: { gap?: number; placements?: readonly Placement[]; before?: Activity } = {},
  ): string[] =>
    told(
      {
        windows: [open],
        activities: [more.before ?? activity('A', 60), waits(more.gap)],
        ...(data && { curing: data }),
      },
      [...(more.placements ?? [put('A', 0, 60)]), put('B', from, from + 60)],
    );

  it('is so the minute its maturity is reached, and the gap after it', () => {
    const data = curing([[0, DAY, 10]]);
    expect(at(data, 660)).toEqual([]);
    expect(at(data, 659)).toEqual(['B not-cured']);
    expect(at(data, 690, { gap: 30 })).toEqual([]);
    expect(at(data, 689, { gap: 30 })).toEqual(['B not-cured']);
    expect(at(data, 5000)).toEqual([]);
  });

  it('goes by the temperature of each minute', () => {
    const data = curing([
      [0, 360, 10],
      [360, DAY, 20],
    ]);
    // 300 minutes bring 50, and 150 more the other 50.
    expect(at(data, 510)).toEqual([]);
    expect(at(data, 509)).toEqual(['B not-cured']);
  });

  it('goes by the other temperature where the table has none, and is not known without one', () => {
    const gap = (otherwiseC?: number): CuringData =>
      curing(
        [
          [0, 360, 10],
          [420, DAY, 10],
        ],
        otherwiseC,
      );
    expect(at(gap(10), 660)).toEqual([]);
    expect(at(gap(0), 720)).toEqual([]);
    expect(at(gap(0), 719)).toEqual(['B not-cured']);
    expect(at(gap(), 5000)).toEqual(['B not-cured']);
    const ends = curing([[0, 360, 10]], 20);
    // 300 minutes bring 50, and 150 at the other temperature the rest.
    expect(at(ends, 510)).toEqual([]);
    expect(at(ends, 509)).toEqual(['B not-cured']);
    expect(at(curing([[200, DAY, 10]]), 5000)).toEqual(['B not-cured']);
  });

  it('is told with what is missing', () => {
    const why = (data: CuringData): string[] =>
      texts({ windows: [open], activities: [activity('A', 60), waits()], curing: data }, [
        put('A', 0, 60),
        put('B', 123, 183),
      ]);
    const before = 'B begins before A has cured: ';
    expect(why(curing([[0, DAY, 10]]))).toEqual([`${before}10.5 of 100 is reached`]);
    expect(why(curing([[100, DAY, 10]]))).toEqual([
      `${before}no temperature is known for a part of the time`,
    ]);
  });

  it('counts from the last of what was placed, and asks nothing where nothing was', () => {
    const data = curing([[0, 5 * DAY, 10]]);
    const before = activity('A', 0, { units: [2, 60, 0, 0] });
    const placements = [put('A', 200, 260, { units: 1 }), put('A', 0, 60, { units: 1 })];
    expect(at(data, 860, { before, placements })).toEqual([]);
    expect(at(data, 859, { before, placements })).toEqual(['B not-cured']);
    expect(at(data, 859, { placements: [] })).toEqual(['B link']);
  });

  it('is never so where the plan says nothing of concrete', () => {
    expect(at(undefined, 5000)).toEqual(['B not-cured']);
  });
});

describe('any plan', () => {
  it('tells what is placed and not in it, and of the rest no less', () => {
    const parts = { windows: [open], activities: [activity('A', 60)] };
    expect(told(parts, [put('Z', 0, 60), put('A', 0, 59)])).toEqual([
      'Z unknown-activity',
      'A minutes',
    ]);
    expect(told(parts, [])).toEqual([]);
  });
});
