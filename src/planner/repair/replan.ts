import { isoText } from '../../calendar/index.js';
import type { Placement } from '../fit/index.js';
import { unitsLeft, type Activity, type Plan } from '../../model/index.js';
import { allocate, type AllocateOptions } from '../search/allocate.js';
import { brokenAlone, brokenBy } from '../search/broken.js';
import { fewestMoves, keyDatesOf, worth } from './fewest-moves.js';
import type { Allocation } from '../search/types.js';

/** How long a plan is looked for, at the most, with some choice of packages held. */
const TRY_SECONDS = 0.5;

/** An activity that is not where it was. */
export interface Move {
  readonly activity: string;
  readonly package: string;
  /** Empty when it was not placed. */
  readonly before: readonly Placement[];
  /** Empty when it finds no place now. */
  readonly after: readonly Placement[];
  readonly why: string;
}

export interface Replan {
  readonly allocation: Allocation;
  readonly moved: readonly Move[];
  /** Packages of which something moved, in the order of the plan. */
  readonly packagesMoved: readonly string[];
  /**
   * Of the packages that had a place, so many have to move at the least for as much to be placed and key dates to be met
   * as well. `proven`: no more do.
   */
  readonly fewest: { readonly atLeast: number; readonly proven: boolean };
}

/**
 * A plan for what is so now that moves as few packages as it can of the plan made before.
 *
 * What can no longer be where it was must move. Another package moves only if that lets more be placed or key dates
 * be met better; that is tried one package after another, and then, in what is left of the time, for every choice of
 * fewer packages.
 */
export function replan(plan: Plan, before: Allocation, options: AllocateOptions): Replan {
  const { clock } = options;
  const seconds = options.seconds ?? 5;
  const end = clock() + seconds * 1000;
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const known = stillMeant(activities, before.placements);
  const broken = brokenBy(plan, known);
  const packageOf = (one: Placement): string => activities.get(one.activity)!.package;
  const forced = new Set([...broken.keys()].map((id) => activities.get(id)!.package));

  const attempt = (released: ReadonlySet<string>, share: number): Allocation =>
    allocate(plan, {
      ...options,
      seconds: Math.max(0, ((end - clock()) / 1000) * share),
      keep: known.filter((one) => !released.has(packageOf(one))),
    });
  let released: ReadonlySet<string> = forced;
  let best = attempt(released, 0.25);
  // What could be had if all might move; not asked when nothing is left to wish for.
  const perfect =
    best.certificate.verified && best.unplaced.length === 0 && keyDatesOf(best).value === 0;
  const { keep: _, ...unbound } = options;
  const free = perfect ? best : allocate(plan, { ...unbound, seconds: seconds / 4 });
  const packages = [...new Set(known.map(packageOf))];
  while (worth(free, best) < 0 && clock() < end) {
    let step: { released: ReadonlySet<string>; allocation: Allocation } | undefined;
    const others = packages.filter((each) => !released.has(each));
    for (const [i, other] of others.entries()) {
      if (clock() >= end) break;
      const wider = new Set([...released, other]);
      const allocation = attempt(wider, 1 / (others.length - i + 1));
      if (worth(allocation, step?.allocation ?? best) < 0) step = { released: wider, allocation };
    }
    // No package on its own helps: all may move.
    if (!step) {
      best = free;
      break;
    }
    ({ released, allocation: best } = step);
  }
  const alone = brokenAlone(plan, known);
  const fewest = fewestMoves({
    plan,
    known,
    packageOf,
    forced: new Set([...alone].map((id) => activities.get(id)!.package)),
    best,
    // With another value first, key dates are only as good as that lets them be: nothing is proven of them.
    provable: options.first === undefined || options.first === 'key-dates',
    attempt: (keep) =>
      allocate(plan, { ...options, seconds: Math.min((end - clock()) / 1000, TRY_SECONDS), keep }),
    outOfTime: () => clock() >= end || options.shouldStop?.(0) === true,
  });
  best = fewest.allocation;
  const moved = movesOf(plan, before.placements, best.placements, broken);
  const names = new Set(moved.map((move) => move.package));
  return {
    allocation: best,
    moved,
    packagesMoved: packages
      .concat(plan.activities.map((activity) => activity.package))
      .filter((each, i, all) => names.has(each) && all.indexOf(each) === i),
    fewest: { atLeast: fewest.atLeast, proven: fewest.proven },
  };
}

/** Placements of work that is still in the plan with at least that much of it left. */
function stillMeant(
  activities: ReadonlyMap<string, Activity>,
  placements: readonly Placement[],
): Placement[] {
  return placements.filter((one) => {
    const activity = activities.get(one.activity);
    if (!activity) return false;
    const units = placements
      .filter((other) => other.activity === one.activity)
      .reduce((sum, other) => sum + (other.units ?? 1), 0);
    return units <= unitsLeft(activity.work);
  });
}

function movesOf(
  plan: Plan,
  before: readonly Placement[],
  after: readonly Placement[],
  broken: ReadonlyMap<string, string>,
): Move[] {
  return plan.activities.flatMap((activity): Move[] => {
    const own = (all: readonly Placement[]): Placement[] =>
      all.filter((one) => one.activity === activity.id).toSorted((a, b) => a.from - b.from);
    const [was, is] = [own(before), own(after)];
    if (same(was, is) || unitsLeft(activity.work) === 0) return [];
    const why =
      broken.get(activity.id) ??
      (was.length === 0
        ? `${activity.id} had no place before`
        : is.length === 0
          ? `${activity.id} finds no place any more`
          : `${activity.id} goes with the rest of ${activity.package} or makes room for other work`);
    const to = is[0]
      ? `; now ${isoText(is[0].from, plan.zone).slice(0, 16).replace('T', ' ')}`
      : '';
    return [
      { activity: activity.id, package: activity.package, before: was, after: is, why: why + to },
    ];
  });
}

function same(a: readonly Placement[], b: readonly Placement[]): boolean {
  return (
    a.length === b.length &&
    a.every(
      (one, i) =>
        one.window === b[i]!.window &&
        one.from === b[i]!.from &&
        one.to === b[i]!.to &&
        one.units === b[i]!.units,
    )
  );
}
