import type { Placement } from '../fit/index.js';
import type { Plan } from '../../model/index.js';
import { brokenBy } from '../search/broken.js';
import type { Allocation } from '../search/types.js';

export interface FewestMovesCase {
  readonly plan: Plan;
  /** Placements made before of work that is still meant. */
  readonly known: readonly Placement[];
  readonly packageOf: (one: Placement) => string;
  /** Packages of which something cannot stay where it was, whatever else is done. */
  readonly forced: ReadonlySet<string>;
  /** A plan that is good enough. */
  readonly best: Allocation;
  /** Whether what an attempt does not find is certain not to be, where its certificate says so. */
  readonly provable: boolean;
  readonly attempt: (keep: readonly Placement[]) => Allocation;
  readonly outOfTime: () => boolean;
}

export interface FewestMoves {
  readonly allocation: Allocation;
  /** Of the packages that had a place, so many have to move at the least for a plan as good. */
  readonly atLeast: number;
  /** The plan moves no more than that. */
  readonly proven: boolean;
}

/**
 * The plan that moves the fewest packages of all that are as good as the one known: every choice of packages that may
 * move is tried, the smallest first, until one will do or the time is up.
 */
export function fewestMoves(one: FewestMovesCase): FewestMoves {
  const { plan, known, packageOf, forced, best, provable, attempt, outOfTime } = one;
  const packages = [...new Set(known.map(packageOf))];
  const others = packages.filter((each) => !forced.has(each));
  const count = packagesMoved(best.placements, one).size;
  // The first size at which something was left open.
  let open = Number.POSITIVE_INFINITY;
  for (let size = forced.size; size < count; size += 1)
    for (const some of choices(others, size - forced.size)) {
      if (outOfTime()) {
        open = Math.min(open, size);
        return { allocation: best, atLeast: open, proven: false };
      }
      const keep = known.filter(
        (each) => !forced.has(packageOf(each)) && !some.includes(packageOf(each)),
      );
      // What stays is at odds with itself.
      if (brokenBy(plan, keep).size > 0) continue;
      const allocation = attempt(keep);
      if (worth(allocation, best) <= 0)
        return {
          allocation,
          atLeast: Math.min(open, size),
          proven: open > size && packagesMoved(allocation.placements, one).size <= size,
        };
      if (!provable || !isRefuted(allocation, best)) open = Math.min(open, size);
    }
  const atLeast = Math.min(open, count);
  return { allocation: best, atLeast, proven: atLeast === count };
}

/** Packages of which something that had a place is not there any more. */
export function packagesMoved(
  placements: readonly Placement[],
  { known, packageOf }: Pick<FewestMovesCase, 'known' | 'packageOf'>,
): ReadonlySet<string> {
  const now = new Set(placements.map(keyOf));
  return new Set(known.filter((one) => !now.has(keyOf(one))).map(packageOf));
}

function keyOf(one: Placement): string {
  return JSON.stringify([one.activity, one.window, one.from, one.to, one.units]);
}

/** Negative when the first is the better: it holds, more is placed, then key dates are met better. */
export function worth(a: Allocation, b: Allocation): number {
  return (
    Number(b.certificate.verified) - Number(a.certificate.verified) ||
    a.unplaced.length - b.unplaced.length ||
    keyDatesOf(a).value - keyDatesOf(b).value
  );
}

/** Whether it is certain that with what stays no plan is as good as one that is known. */
function isRefuted(one: Allocation, known: Allocation): boolean {
  if (!one.certificate.mostPlaced) return false;
  if (!one.certificate.verified || one.unplaced.length > known.unplaced.length) return true;
  return keyDatesOf(one).lowerBound > keyDatesOf(known).value;
}

export function keyDatesOf(one: Allocation): {
  readonly value: number;
  readonly lowerBound: number;
} {
  return one.certificate.objectives.find((each) => each.name === 'key-dates')!;
}

function* choices(from: readonly string[], count: number): Generator<readonly string[]> {
  if (count === 0) yield [];
  else
    for (let i = 0; i + count <= from.length; i += 1)
      for (const rest of choices(from.slice(i + 1), count - 1)) yield [from[i]!, ...rest];
}
