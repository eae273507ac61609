import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/planner/random.js';
import type { Slot, Task } from '../../../src/planner/problem/problem.js';
import { latestBegun, soonestDone } from '../../../src/planner/problem/units-in-slots.js';

// Checked by trying every way to share the units out over visits, minute by minute; no source beside the definition.

interface Case {
  readonly task: Task;
  readonly from: number;
  readonly units: number;
}

/** The soonest end of any row of visits, each in one slot and none before the one before has ended. */
function soonestByTrying({ task, from, units }: Case): number {
  const known = new Map<string, number>();
  const best = (left: number, at: number): number => {
    if (left === 0) return at;
    const key = `${left} ${at}`;
    let found = known.get(key);
    if (found !== undefined) return found;
    found = Number.POSITIVE_INFINITY;
    for (const slot of task.slots)
      for (let some = 1; some <= left; some += 1) {
        const end = Math.max(at, slot.start) + task.setUp + some * task.perUnit + task.makeSafe;
        if (end <= slot.end) found = Math.min(found, best(left - some, end));
      }
    known.set(key, found);
    return found;
  };
  return best(units, from);
}

/** The same with time turned round. */
function turned({ task, from, units }: Case): Case {
  const slots = task.slots
    .map(({ window, start, end }) => ({ window, start: -end, end: -start }))
    .toSorted((a, b) => a.start - b.start || a.end - b.end);
  return { task: { ...task, slots }, from: -from, units };
}

function caseOf(seed: number, overlapping: boolean, latest = 30): Case {
  const random = createRandom(seed);
  const upTo = (most: number): number => random.below(most + 1);
  const slots: Slot[] = [];
  let at = upTo(10);
  for (let window = 0; window < 1 + (seed % 5); window += 1) {
    const end = at + 1 + upTo(40);
    slots.push({ window, start: at, end });
    at = overlapping && upTo(1) === 0 ? at + upTo(end - at) : end + upTo(8);
  }
  const task = {
    slots,
    perUnit: 1 + upTo(7),
    setUp: upTo(4),
    makeSafe: upTo(4),
  } as Partial<Task> as Task;
  return { task, from: upTo(latest), units: 2 + upTo(7) };
}

describe('units in stretches of usable time', () => {
  it('are done as soon as any row of visits does them', () => {
    for (let seed = 1; seed <= 2000; seed += 1) {
      const one = caseOf(seed, false);
      expect(soonestDone(one.task, one.from, one.units), `seed ${seed}`).toBe(soonestByTrying(one));
    }
  });

  it('may begin as late as any row of visits that ends in time', () => {
    for (let seed = 1; seed <= 2000; seed += 1) {
      const one = caseOf(seed, false, 200);
      expect(latestBegun(one.task, one.from, one.units), `seed ${seed}`).toBe(
        0 - soonestByTrying(turned(one)),
      );
    }
  });

  it('are never called done later, or begun sooner, than they can be where stretches overlap', () => {
    let looser = 0;
    for (let seed = 1; seed <= 2000; seed += 1) {
      const one = caseOf(seed, true);
      const soonest = soonestByTrying(one);
      const told = soonestDone(one.task, one.from, one.units);
      expect(told, `seed ${seed}`).toBeLessThanOrEqual(soonest);
      if (told < soonest) looser += 1;
      const back = caseOf(seed, true, 200);
      expect(latestBegun(back.task, back.from, back.units), `seed ${seed}`).toBeGreaterThanOrEqual(
        0 - soonestByTrying(turned(back)),
      );
    }
    expect(looser).toBeLessThan(1000);
  });
});
