import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Placement, Plan } from '../../../src/model/index.js';
import { frozenIn } from '../../../src/planner/given/frozen.js';
import { allocate, repair } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { changedPlan } from '../../helpers/changed-plan.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { randomPlan } from '../../helpers/random-plan.js';

const options = { clock: (): number => 0, effort: 0.1 };
const cases = Number(process.env['FROZEN_CASES'] ?? 30);

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
      if (base.every((one) => one.window === null)) continue;
      looked += 1;
      const now = changedPlan(document, base, step, seed);
      const middle = base[Math.floor(base.length / 2)]!.to;
      const frozen = frozenIn(now, base, middle);
      const early = base.filter((one) => one.from < middle);
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
  }, 3_600_000);

  it('stays where a better place is free, and the rest is still mended', () => {
    const gone: Plan = {
      ...two,
      windows: two.windows.map((one) => (one.id === 'P3' ? { ...one, status: 'withdrawn' } : one)),
    };
    const { kept, lost } = frozenIn(gone, before, 1440 * MINUTE);
    expect([kept, lost]).toEqual([[before[0]], []]);
    const found = repair(gone, before, { ...options, keep: kept });
    expect(found.allocation.placements).toContainEqual(before[0]);
    expect(found.moved.map((one) => one.activity)).toEqual(['A3']);
  });

  it('is let go, and told, where its window is cut, with what waited for it', () => {
    const cut: Plan = {
      ...two,
      windows: two.windows.map((one) =>
        one.id === 'P2' ? { ...one, end: one.start + 100 * MINUTE } : one,
      ),
    };
    const { kept, lost } = frozenIn(cut, before, 1e9 * MINUTE);
    expect(kept.map((one) => one.activity)).toEqual(['A1']);
    expect(lost.map((one) => one.placement.activity)).toEqual(['A2', 'A3']);
    expect(repair(cut, before, { ...options, keep: kept }).allocation.unplaced).toEqual([]);
  });

  it('a gain that would move it is not offered', () => {
    const free = repair(two, before, options).more;
    expect(free?.keyDatesMet).toBe(1);
    const { kept } = frozenIn(two, before, 1440 * MINUTE);
    expect(repair(two, before, { ...options, keep: kept }).more).toBeNull();
  });
});
