import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Placement, Plan } from '../../../src/model/index.js';
import { allocate, repair } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { oracle } from '../../helpers/oracle.js';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { planFromDocument } from '../../../src/tables/index.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';
import { changedPlan } from '../../helpers/changed-plan.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { sampleAgreed } from '../../helpers/sample-agreed.js';

const clock = (): number => 0;
const options = { clock, effort: 0.2 };
const cases = Number(process.env['REPAIR_CASES'] ?? 20);

// Reckoned by hand: the crew has four hours in W1, and A0 and A1 take them; A2 has lost its window. One of the three is
// left out whatever is done, and where that is A2 nothing else moves.
it('leaves out what lost its window, not what would finish sooner without', () => {
  const job = (id: string, minutes: number) =>
    activity(id, minutes, { package: 'Q', resources: { crew: 1 }, keyDate: 240 });
  const of = plan({
    windows: [window('W1', 0, 240), window('W2', 120, 240, { status: 'withdrawn' })],
    activities: [job('A0', 120), job('A1', 120), job('A2', 90)],
    resources: [resource('crew', [{ capacity: 1 }])],
  });
  const at = (id: string, where: string, from: number, to: number): Placement => ({
    activity: id,
    window: where,
    from: from * MINUTE,
    to: to * MINUTE,
  });
  const base = [at('A1', 'W1', 0, 120), at('A0', 'W1', 120, 240), at('A2', 'W2', 240, 330)];
  const { moved, allocation } = repair(of, base, options);
  expect(moved.map((item) => item.activity)).toEqual(['A2']);
  expect(allocation.unplaced.map((item) => item.activity)).toEqual(['A2']);
});

/** The date that each activity had to keep by the plan before. */
function agreed(of: Plan, base: readonly Placement[]): Plan {
  const ends = new Map<string, number>();
  for (const item of of.activities) {
    const key = `${item.package} ${item.keyDate}`;
    for (const piece of base)
      if (piece.activity === item.id && item.keyDate !== undefined)
        ends.set(key, Math.max(ends.get(key) ?? item.keyDate, piece.to));
  }
  return {
    ...of,
    activities: of.activities.map((item) => {
      const date = ends.get(`${item.package} ${item.keyDate}`);
      return date === undefined ? item : { ...item, keyDate: date };
    }),
  };
}

/**
 * Fewest pieces that must be let go for a plan as good, by trying every choice of them; undefined where not all can be
 * placed: what is left out counts as moved, whichever it is.
 */
function fewestBySubsets(of: Plan, base: readonly Placement[], step: number): number | undefined {
  const inside = base.filter((placement) => placement.window !== null);
  const dated = agreed(of, base);
  const best = oracle(dated, ['key-dates'], step);
  if (best.unplaced > 0) return undefined;
  for (let size = 0; size <= inside.length; size += 1)
    for (let mask = 0; mask < 1 << inside.length; mask += 1) {
      const free = new Set(
        inside.filter((_, i) => mask & (1 << i)).map((placement) => placement.activity),
      );
      if (free.size !== size) continue;
      const stays = new Map(inside.map((placement) => [placement.activity, placement.window!]));
      const held: Plan = {
        ...dated,
        activities: dated.activities.map((item) => {
          const at = free.has(item.id) ? undefined : stays.get(item.id);
          return at === undefined ? item : { ...item, window: at };
        }),
      };
      const value = oracle(held, ['key-dates'], step);
      if (
        value.unplaced <= best.unplaced &&
        value.unitsOut <= best.unitsOut &&
        value.values['key-dates'] <= best.values['key-dates']
      )
        return size;
    }
  throw new Error('all free is no worse than the best');
}

describe('repair', () => {
  it(`moves as few pieces as trying every choice of them does, in ${cases} random plans`, () => {
    let proven = 0;
    let looked = 0;
    for (let seed = 1; looked < cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed);
      const base = allocate(document, options).placements;
      const visits = new Set(base.map((placement) => placement.activity));
      if (base.length === 0 || visits.size < base.length) continue;
      if (base.every((placement) => placement.window === null)) continue;
      const now = changedPlan(document, base, step, seed);
      const found = repair(now, base, options);
      expect({ seed, faults: verify(now, found.allocation) }).toEqual({
        seed,
        faults: [],
      });
      const size = fewestBySubsets(now, base, step);
      if (size === undefined) continue;
      looked += 1;
      expect({ seed, bound: found.fewest.lowerBound <= size }).toEqual({ seed, bound: true });
      if (!found.fewest.proven) continue;
      proven += 1;
      expect({ seed, moved: found.fewest.moved }).toEqual({ seed, moved: size });
    }
    expect(proven).toBeGreaterThan(cases * 0.9);
  });

  const crane = resource('crane', [{ capacity: 1 }]);
  const onCrane = { resources: { crane: 1 } };
  const document = plan({
    windows: [window('P1', 0, 300), window('P2', 1440, 300), window('P3', 2880, 300)],
    activities: [
      activity('A1', 200, { ...onCrane, package: 'W1' }),
      activity('B1', 200, { ...onCrane, package: 'W2' }),
      activity('B2', 50, { ...onCrane, package: 'W2', after: ['B1'] }),
    ],
    resources: [crane],
  });
  const base = allocate(document, options).placements;

  it('leaves all as it was where nothing has changed, and where a window comes', () => {
    const more: Plan = { ...document, windows: [...document.windows, window('P0', -1440, 300)] };
    for (const now of [document, more]) {
      const found = repair(now, base, options);
      expect(found.allocation.placements).toEqual(base);
      expect(found).toMatchObject({ moved: [], fewest: { moved: 0, lowerBound: 0, proven: true } });
    }
  });

  const withdrawn = (id: string): Plan => ({
    ...document,
    windows: document.windows.map((item) =>
      item.id === id ? { ...item, status: 'withdrawn' as const } : item,
    ),
  });

  it('leaves what is kept where it is, to the minute', () => {
    // B1 and B2 must leave P1. A1 stays in P2, or an hour later there than it was.
    const [own] = base.filter((placement) => placement.activity === 'A1');
    expect(own!.window).toBe('P2');
    const later = { ...own!, from: own!.from + 60 * MINUTE, to: own!.to + 60 * MINUTE };
    for (const kept of [own!, later]) {
      const { allocation } = repair(withdrawn('P1'), base, { ...options, keep: [kept] });
      expect(verify(withdrawn('P1'), allocation)).toEqual([]);
      expect(allocation.unplaced).toEqual([]);
      expect(allocation.placements).toContainEqual(kept);
    }
  });

  it('leaves out what is kept in a window that no longer takes it, and says so', () => {
    const keep = base.filter((placement) => placement.activity === 'B2');
    const now = withdrawn('P1');
    const { allocation } = repair(now, base, { ...options, keep });
    expect(allocation.unplaced).toMatchObject([
      {
        activity: 'B2',
        reasons: [{ code: 'kept-in-place', text: 'is kept in P1 and cannot stay' }],
      },
    ]);
    expect(verify(now, allocation)).toEqual([]);
  });

  it('moves what is fixed in another window by now', () => {
    const now: Plan = {
      ...document,
      activities: document.activities.map((item) =>
        item.id === 'A1' ? { ...item, window: 'P3' } : item,
      ),
    };
    const { allocation, moved } = repair(now, base, options);
    expect(moved).toMatchObject([{ activity: 'A1', to: ['P3'] }]);
    expect(verify(now, allocation)).toEqual([]);
  });

  it('keeps every piece that may stay, in random plans', () => {
    for (let seed = 1; seed <= 15; seed += 1) {
      const { plan: of, step } = randomPlan(seed);
      const before = allocate(of, options).placements;
      if (before.every((placement) => placement.window === null)) continue;
      const now = changedPlan(of, before, step, seed);
      const stays = repair(now, before, options).allocation.placements;
      // What stayed without being asked to can stay where it is when asked to.
      const keep = before.filter((placement) =>
        stays.some(
          (other) =>
            other.activity === placement.activity &&
            other.from === placement.from &&
            other.to === placement.to &&
            other.units === placement.units,
        ),
      );
      const { allocation } = repair(now, before, { ...options, keep });
      expect({ seed, faults: verify(now, allocation) }).toEqual({ seed, faults: [] });
      expect({ seed, placements: allocation.placements }).toEqual({
        seed,
        placements: expect.arrayContaining(keep) as unknown,
      });
    }
  });

  it('names plant that is shared, and what is withdrawn', () => {
    const cut = plan({
      windows: [window('P1', 0, 250), window('P2', 1440, 300)],
      activities: [activity('A1', 120, onCrane), activity('A2', 120, onCrane)],
      resources: [crane],
    });
    const before = allocate(cut, options).placements;
    expect(before.map((placement) => placement.window)).toEqual(['P1', 'P1']);
    const shorter: Plan = { ...cut, windows: [window('P1', 0, 200), window('P2', 1440, 300)] };
    const [move, ...others] = repair(shorter, before, options).moved;
    expect(others).toEqual([]);
    expect(move!.reason.text).toMatch(/^crane is shared with A[12]$/);
    const gone: Plan = {
      ...cut,
      windows: cut.windows.map((item) =>
        item.id === 'P1' ? { ...item, status: 'withdrawn' as const } : item,
      ),
    };
    expect(repair(gone, before, options).moved).toMatchObject([
      { activity: 'A1', from: 'P1', to: ['P2'], reason: { text: 'P1 is withdrawn' } },
      { activity: 'A2', from: 'P1', to: ['P2'], reason: { text: 'P1 is withdrawn' } },
    ]);
  });

  it('names the key date, not a lack of time, where a window now lies too late for it', () => {
    const keyDate = 3000;
    const before = plan({
      windows: [window('P1', 0, 300), window('P2', 1440, 300)],
      activities: [
        activity('A1', 60, { keyDate }),
        activity('B1', 60),
        activity('B2', 30, { after: ['B1'], keyDate }),
      ],
    });
    const made = allocate(before, options).placements;
    expect(made.map((placement) => placement.window)).toEqual(['P1', 'P1', 'P1']);
    const later: Plan = {
      ...before,
      windows: [window('P1', 20_000, 300), window('P2', 1440, 300)],
    };
    const { moved } = repair(later, made, options);
    expect(moved.map(({ activity: id, reason }) => [id, reason.text])).toEqual([
      ['A1', 'in P1 a key date would not be kept'],
      ['B1', 'B2 waits for it and moves'],
      ['B2', 'in P1 a key date would not be kept'],
    ]);
  });

  it('tells what moving more would gain', () => {
    // A1 may go later; only then is there room for A2 by its date, which was missed before as well.
    const dated = plan({
      windows: [window('P1', 0, 300), window('P2', 1440, 300)],
      activities: [activity('A1', 200, onCrane), activity('A2', 200, { ...onCrane, keyDate: 300 })],
      resources: [crane],
    });
    const before: Placement[] = [
      { activity: 'A1', window: 'P1', from: 0, to: 200 * MINUTE },
      { activity: 'A2', window: 'P2', from: 1440 * MINUTE, to: 1640 * MINUTE },
    ];
    const found = repair(dated, before, options);
    expect(found.moved).toEqual([]);
    expect(found.more).toEqual({ keyDatesMet: 1, placed: 0, moved: 2 });
  });

  it('counts as few pieces as moved as lie elsewhere, where one window held several of one piece of work', () => {
    const own = (end: number): Plan =>
      plan({
        windows: [window('P1', 0, end), window('P2', 1440, 300)],
        activities: [activity('A1', 0, { units: [9, 10, 0, 0] })],
        resources: [],
      });
    const before = [5, 2, 2].map((units, at): Placement => {
      const from = own(300).windows[0]!.start + at * 60 * MINUTE;
      return { activity: 'A1', window: 'P1', from, to: from + units * 10 * MINUTE, units };
    });
    // Room for six of nine: the five go, or one of the twos is not enough.
    const { moved, fewest } = repair(own(60), before, options);
    expect(moved.map(({ units }) => units)).toEqual([5]);
    expect(fewest).toEqual({ moved: 1, lowerBound: 1, proven: true });
  });

  // The least was proven by CP-SAT for this very plan of the sample: `bench/plans/repairs.ts`.
  it.each([
    { id: 'S05', hours: 1, least: 4 },
    { id: 'S02', hours: 4, least: 3 },
  ])(
    'moves at most one piece more than the proven least of the sample with $id cut by $hours h',
    async ({ id, hours, least }) => {
      const { document: files } = await importFiles(sampleFiles(), emptyDocument);
      const { plan: sample } = planFromDocument(files);
      const windows = sample.windows.map((item) =>
        item.id === id ? { ...item, end: item.end - hours * 60 * MINUTE } : item,
      );
      const { allocation, fewest } = repair({ ...sample, windows }, sampleAgreed, { clock });
      expect(verify({ ...sample, windows }, allocation)).toEqual([]);
      expect(allocation.unplaced).toEqual([]);
      expect(fewest.lowerBound).toBeLessThanOrEqual(least);
      expect(fewest.moved).toBeGreaterThanOrEqual(least);
      expect(fewest.moved).toBeLessThanOrEqual(least + 1);
    },
    600_000,
  );
});
