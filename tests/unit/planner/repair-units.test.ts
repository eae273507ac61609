import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Plan } from '../../../src/model/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { allocate, repair } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';

const options = { clock: (): number => 0, effort: 0.1 };
const cases = Number(process.env['REPAIR_CASES'] ?? 30);

interface Kind {
  readonly units: number;
  readonly each: number;
  readonly setUp: number;
  readonly makeSafe: number;
}

/** Every way to share out some units over so many windows. */
function shares(units: number, windows: number): number[][] {
  if (windows === 1) return [[units]];
  return Array.from({ length: units + 1 }, (_, here) => here).flatMap((here) =>
    shares(units - here, windows - 1).map((rest) => [here, ...rest]),
  );
}

/**
 * The fewest pieces that leave their windows, by trying every way to share out all units of two kinds of work that one gang
 * does: a window holds them where set up, units and make safe of what is done there come to no more than its minutes. This is
 * reckoned here alone. Undefined where not all find room.
 */
function fewestByShares(
  kinds: readonly [Kind, Kind],
  minutes: readonly number[],
  pieces: readonly { readonly kind: number; readonly window: number; readonly units: number }[],
): number | undefined {
  const took = ({ each, setUp, makeSafe }: Kind, units: number): number =>
    units === 0 ? 0 : setUp + units * each + makeSafe;
  let best: number | undefined;
  const seconds = shares(kinds[1].units, minutes.length);
  for (const first of shares(kinds[0].units, minutes.length))
    for (const second of seconds) {
      const fits = minutes.every(
        (all, at) => took(kinds[0], first[at]!) + took(kinds[1], second[at]!) <= all,
      );
      if (!fits) continue;
      let moved = 0;
      [first, second].forEach((share, kind) => {
        share.forEach((units, at) => {
          let left = units;
          const own = pieces.filter((piece) => piece.kind === kind && piece.window === at);
          // With the smallest kept first, as many stay as there is room for.
          for (const piece of own.toSorted((a, b) => a.units - b.units))
            if (piece.units <= left) left -= piece.units;
            else moved += 1;
        });
      });
      if (best === undefined || moved < best) best = moved;
    }
  return best;
}

describe('the repair of repeated work', () => {
  it(`moves as few pieces as trying every way to share out the units does, in ${cases} random plans`, () => {
    let proven = 0;
    let least = 0;
    for (let seed = 1, looked = 0; looked < cases; seed += 1) {
      const random = createRandom(seed);
      const kind = (): Kind => ({
        units: 3 + random.below(5),
        each: 10 + random.below(11),
        setUp: 5 * random.below(4),
        makeSafe: 5 * random.below(3),
      });
      const kinds = [kind(), kind()] as const;
      const minutes = Array.from({ length: 4 }, () => 50 + random.below(90));
      const planOf = (lengths: readonly number[]): Plan =>
        plan({
          windows: lengths.map((length, at) => window(`P${at}`, at * 1440, length)),
          activities: kinds.map(({ units, each, setUp, makeSafe }, at) =>
            activity(`A${at}`, 0, {
              units: [units, each, setUp, makeSafe],
              resources: { gang: 1 },
              package: `W${at}`,
            }),
          ),
          resources: [resource('gang', [{ capacity: 1 }])],
        });
      const before = allocate(planOf(minutes), options);
      if (before.unplaced.length > 0) continue;
      const cut = random.below(4);
      const less = minutes.map((length, at) =>
        at === cut ? Math.max(1, length - 10 - random.below(60)) : length,
      );
      const pieces = before.placements.map((placement) => ({
        kind: Number(placement.activity.slice(1)),
        window: Number(placement.window!.slice(1)),
        units: placement.units!,
      }));
      const fewest = fewestByShares(kinds, less, pieces);
      if (fewest === undefined || fewest === 0) continue;
      looked += 1;
      const found = repair(planOf(less), before.placements, options);
      expect({ seed, faults: verify(planOf(less), found.allocation) }).toEqual({
        seed,
        faults: [],
      });
      expect({ seed, out: found.allocation.unplaced }).toEqual({ seed, out: [] });
      expect({ seed, bound: found.fewest.lowerBound <= fewest }).toEqual({ seed, bound: true });
      expect(found.fewest.moved).toBeGreaterThanOrEqual(fewest);
      expect({ seed, moved: found.fewest.moved <= fewest + 1 }).toEqual({ seed, moved: true });
      if (found.fewest.moved === fewest) least += 1;
      if (found.fewest.proven) {
        proven += 1;
        expect({ seed, moved: found.fewest.moved }).toEqual({ seed, moved: fewest });
      }
    }
    expect(least).toBeGreaterThan(cases * 0.9);
    expect(proven).toBeGreaterThan(cases * 0.5);
  });

  it('does the units that leave in one go with those of the same work elsewhere', () => {
    // P0 loses 20 minutes: 2 of its 5 units leave. P1 has room for them only without a set up of their own: 5 + 4 x 20 + 5.
    const own = (first: number): Plan =>
      plan({
        windows: [window('P0', 0, first), window('P1', 1440, 90)],
        activities: [activity('A0', 0, { units: [7, 20, 5, 5], resources: { gang: 1 } })],
        resources: [resource('gang', [{ capacity: 1 }])],
      });
    const before = [5, 2].map((units, at) => {
      const from = own(110).windows[at]!.start;
      return {
        activity: 'A0',
        window: `P${at}`,
        from,
        to: from + (10 + units * 20) * MINUTE,
        units,
      };
    });
    const { allocation, fewest } = repair(own(80), before, options);
    expect(allocation.placements.map(({ window: at, units }) => [at, units])).toEqual([
      ['P0', 3],
      ['P1', 4],
    ]);
    expect(fewest).toEqual({ moved: 1, lowerBound: 1, proven: true });
    expect(verify(own(80), allocation)).toEqual([]);
  });
});
