import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Placement, Plan } from '../../../src/model/index.js';
import { frozenIn } from '../../../src/planner/given/frozen.js';
import { allocate, repair, shortNotice } from '../../../src/planner/search/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { planFurther } from '../../../src/engine/options/plan-further.js';
import { verify } from '../../../src/verify/index.js';
import { changedPlan } from '../../helpers/changed-plan.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';

const options = { clock: (): number => 0, effort: 0.1 };
const cases = Number(process.env['FROZEN_CASES'] ?? 12);

const crane = resource('crane', [{ capacity: 1 }]);
const onCrane = { resources: { crane: 1 } };
const two = plan({
  windows: [window('P1', 0, 300), window('P2', 1440, 300), window('P3', 2880, 300)],
  activities: [
    activity('A1', 200, onCrane),
    activity('A2', 200, { ...onCrane, keyDate: 300 }),
    activity('A3', 100, { ...onCrane, after: ['A2'] }),
  ],
  resources: [crane],
});
const at = (id: string, where: string, from: number, minutes: number): Placement => ({
  activity: id,
  window: where,
  from: from * MINUTE,
  to: (from + minutes) * MINUTE,
});
const before = [at('A1', 'P1', 40, 200), at('A2', 'P2', 1440, 200), at('A3', 'P3', 2880, 100)];

describe('what is frozen of a plan', () => {
  it(`keeps its place to the minute in search and repair, in ${cases} random changes`, () => {
    let looked = 0;
    let kept = 0;
    for (let seed = 1; looked < cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed);
      const base = allocate(document, options).placements;
      if (base.every((placement) => placement.window === null)) continue;
      looked += 1;
      const now = changedPlan(document, base, step, seed);
      const middle = base[Math.floor(base.length / 2)]!.to;
      const frozen = frozenIn(now, base, middle);
      const early = base.filter((placement) => placement.from < middle);
      expect(frozen.kept.length + frozen.lost.length).toBe(early.length);
      kept += frozen.kept.length;
      for (const found of [
        repair(now, base, { ...options, keep: frozen.kept }).allocation,
        allocate(now, { ...options, keep: frozen.kept }),
      ]) {
        expect({ seed, faults: verify(now, found) }).toEqual({ seed, faults: [] });
        for (const piece of frozen.kept) expect(found.placements).toContainEqual(piece);
      }
    }
    expect(kept).toBeGreaterThan(cases / 2);
  });

  it(`keeps its place when a window is offered at short notice, in ${cases} random plans`, () => {
    let looked = 0;
    let held = 0;
    for (let seed = 1; looked < cases; seed += 1) {
      const { plan: document } = randomPlan(seed);
      const [offered, ...others] = document.windows;
      if (offered === undefined || others.length === 0) continue;
      const now: Plan = { ...document, windows: others };
      const base = allocate(now, options);
      const inside = base.placements.filter((placement) => placement.window !== null);
      if (inside.length === 0) continue;
      looked += 1;
      const middle = inside[Math.floor(inside.length / 2)]!.to;
      const keep = frozenIn(now, base.placements, middle).kept;
      const found = shortNotice(now, base, offered, { ...options, keep }).allocation;
      expect({ seed, faults: verify(document, found) }).toEqual({ seed, faults: [] });
      for (const piece of keep) expect(found.placements).toContainEqual(piece);
      held += keep.filter((placement) => placement.from >= offered.start).length;
    }
    expect(held).toBeGreaterThan(cases / 2);
  });

  it(`keeps its place in the ways on from a shift, or is said to be left over, in ${cases} random plans`, () => {
    let held = 0;
    let moves = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const random = createRandom(seed);
      const document = plan({
        windows: [0, 1, 2, 3, 4].map((day) => window(`P${day}`, day * 1440, 300)),
        activities: Array.from({ length: 8 }, (_, at) =>
          activity(`A${at}`, 50 + 10 * random.below(15), {
            ...onCrane,
            package: `W${at % 4}`,
            after: at > 0 && random.below(3) === 0 ? [`A${random.below(at)}`] : [],
            ...(random.below(2) === 0 && { keyDate: 1440 * (1 + random.below(4)) }),
          }),
        ),
        resources: [crane],
      });
      const base = allocate(document, options);
      // What was in the first window was not done, and all that comes after may make room for it but what is frozen.
      const done = base.placements.filter((placement) => placement.window !== 'P0');
      const frozen = done.filter((placement) => placement.window === 'P1');
      const free = new Set(document.activities.map((item) => item.id));
      const time = { ...options, seed: 1, shouldStop: () => false };
      const further = (some: readonly Placement[]): ReturnType<typeof planFurther> =>
        planFurther(document, document.windows[0]!.end, done, free, base, {
          ...time,
          frozen: some,
        });
      const isThere = ({ placements }: ReturnType<typeof planFurther>, piece: Placement): boolean =>
        placements.some((placement) => JSON.stringify(placement) === JSON.stringify(piece));
      const [found, loose] = [further(frozen), further([])];
      const left = new Set(found.unplaced.map((item) => item.activity));
      for (const piece of frozen) {
        const stays = isThere(found, piece);
        expect({ seed, piece, ok: stays || left.has(piece.activity) }).toMatchObject({ ok: true });
        held += Number(stays);
        moves += Number(!isThere(loose, piece));
      }
    }
    // Without the freeze some of it would have moved.
    expect(held).toBeGreaterThan(0);
    expect(moves).toBeGreaterThan(0);
  });

  it('stays where a better place is free, and the rest is still mended', () => {
    const gone: Plan = {
      ...two,
      windows: two.windows.map((item) =>
        item.id === 'P3' ? { ...item, status: 'withdrawn' } : item,
      ),
    };
    const { kept, lost } = frozenIn(gone, before, 1440 * MINUTE);
    expect([kept, lost]).toEqual([[before[0]], []]);
    const found = repair(gone, before, { ...options, keep: kept });
    expect(found.allocation.placements).toContainEqual(before[0]);
    expect(found.moved.map((item) => item.activity)).toEqual(['A3']);
  });

  it('is let go, and told, where its window is cut, with what waited for it', () => {
    const cut: Plan = {
      ...two,
      windows: two.windows.map((item) =>
        item.id === 'P2' ? { ...item, end: item.start + 100 * MINUTE } : item,
      ),
    };
    const { kept, lost } = frozenIn(cut, before, 1e9 * MINUTE);
    expect(kept.map((placement) => placement.activity)).toEqual(['A1']);
    expect(lost.map((item) => item.placement.activity)).toEqual(['A2', 'A3']);
    expect(repair(cut, before, { ...options, keep: kept }).allocation.unplaced).toEqual([]);
  });

  it('a gain that would move it is not offered', () => {
    const free = repair(two, before, options).more;
    expect(free?.keyDatesMet).toBe(1);
    const { kept } = frozenIn(two, before, 1440 * MINUTE);
    expect(repair(two, before, { ...options, keep: kept }).more).toBeNull();
  });
});
