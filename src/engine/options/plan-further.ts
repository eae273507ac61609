import { MINUTE, type Instant } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import { unitsLeft, type Activity, type Plan } from '../../model/index.js';
import { allocate, leftOpenIn, replan, wholeBlocksIn } from '../../planner/search/index.js';
import type { Allocation, Unplaced } from '../../planner/search/types.js';
import { sayUnplaced } from '../../planner/search/unplaced-sentences.js';
import { verify } from '../../verify/index.js';
import type { Planned, SearchTime } from './plans.js';
import { beside, refit, settled } from './refit.js';

/**
 * A plan in which what lies in windows that begin before `moment` stays and work left over finds its place after it.
 *
 * Placements after the moment stay too, if that leaves nothing without a place; then all but those of `free`
 * activities; then as many packages as can. What is frozen stays in each of these.
 */
export function planFurther(
  plan: Plan,
  moment: Instant,
  placements: readonly Placement[],
  free: ReadonlySet<string>,
  before: Allocation,
  time: SearchTime,
): Planned {
  const later = new Set(
    plan.windows.filter((window) => window.start >= moment).map((window) => window.id),
  );
  const isLater = (placement: Placement): boolean =>
    placement.window === null ? placement.from >= moment : later.has(placement.window);
  const done = placements.filter((placement) => !isLater(placement));
  const after = placements.filter(isLater);
  const suffix = beside(
    {
      ...plan,
      windows: plan.windows.filter((window) => later.has(window.id)),
      activities: whatIsLeft(plan, done, moment, later),
    },
    plan,
    done,
    (placement) => placement.to > moment,
  );
  const known = new Set(before.unplaced.map((item) => item.activity));
  const lost = (allocation: Allocation): readonly Unplaced[] =>
    allocation.unplaced.filter((each) => !known.has(each.activity)).map(noLater);
  const good = (allocation: Allocation): boolean => lost(allocation).length === 0;
  const { frozen, ...how } = time;
  const third = { ...how, effort: how.effort / 3 };
  const stays = after.filter((placement) => frozen.some((other) => isSame(placement, other)));
  const whole = wholeBlocksIn(
    suffix,
    after.filter((placement) => !free.has(placement.activity) || stays.includes(placement)),
  );
  const freer = [...whole, ...stays.filter((stay) => !whole.includes(stay))];
  let found = allocate(suffix, { ...third, keep: after });
  if (!good(found) && freer.length < after.length)
    found = allocate(suffix, { ...third, keep: freer });
  if (!good(found)) {
    const other = replan(
      suffix,
      { ...before, placements: freer },
      { ...third, keep: stays },
    ).allocation;
    // Where work finds no room before what stays and waits for it, that cannot stay.
    if (!found.certificate.holds || lost(other).length < lost(found).length) found = other;
  }
  return {
    placements: [...done, ...found.placements],
    unplaced: lost(found),
    keyDates: found.keyDates,
  };
}

function isSame(placement: Placement, other: Placement): boolean {
  return (
    placement.activity === other.activity &&
    placement.window === other.window &&
    placement.from === other.from &&
    placement.to === other.to
  );
}

/**
 * Units left over put into the next windows with room for them, everything else staying where it is; null where the
 * windows before the next work that waits for them do not hold them all.
 */
export function intoNextWindows(
  plan: Plan,
  moment: Instant,
  placements: readonly Placement[],
  activity: Activity,
  units: number,
  time: SearchTime,
): readonly Placement[] | null {
  const limit = plan.activities
    .flatMap((item) =>
      item.after
        .filter((link) => link.activity === activity.id && link.from === 'finish')
        .flatMap((link) =>
          placements
            .filter((each) => each.activity === item.id)
            .map((each) => each.from - link.gapMinutes * MINUTE),
        ),
    )
    .reduce((first, at) => Math.min(first, at), Infinity);
  const windows = plan.windows
    .filter(
      (window) => window.status !== 'withdrawn' && window.start >= moment && window.start < limit,
    )
    .sort((a, b) => a.start - b.start);
  let made = placements;
  let left = units;
  for (const window of windows) {
    if (left === 0) break;
    const found = refit(plan, window, new Map([[activity.id, left]]), made, time).placements;
    const some = found.filter((placement) => placement.to <= limit);
    if (some.length === 0 || some.length < found.length) continue;
    // What stays must still keep to the plan: two visits at once, for one, are no visits.
    const next = [...made, ...some];
    if (verify(plan, { placements: next }).some((fault) => fault.activity === activity.id))
      continue;
    made = next;
    left -= some.reduce((sum, placement) => sum + (placement.units ?? 1), 0);
  }
  // The last unit opens the line: what makes it good must be where that now is.
  const before = leftOpenIn(plan, placements).length;
  return left === 0 && leftOpenIn(plan, made).length <= before ? made : null;
}

/** What is left over by windows that are over: of those that follow there may be none. */
const noLater = (item: Unplaced): Unplaced => ({
  ...item,
  reasons: item.reasons.map((each) =>
    each.code === 'no-window' ? { code: each.code, ...sayUnplaced('no-later-window', {}) } : each,
  ),
});

/** The activities with work left once the placements are done, free of what they no longer wait for. */
function whatIsLeft(
  plan: Plan,
  done: readonly Placement[],
  moment: Instant,
  later: ReadonlySet<string>,
): readonly Activity[] {
  const units = new Map<string, number>();
  for (const placement of done)
    units.set(placement.activity, (units.get(placement.activity) ?? 0) + (placement.units ?? 1));
  const left = plan.activities
    .map((activity) => ({
      activity,
      left: unitsLeft(activity.work) - (units.get(activity.id) ?? 0),
    }))
    .filter((each) => each.left > 0);
  const ids = new Set(left.map((each) => each.activity.id));
  const begun = (id: string): boolean => (units.get(id) ?? 0) > 0;
  return left.map(({ activity }): Activity => {
    const over = activity.after.filter(
      (link) => !ids.has(link.activity) || (link.from === 'start' && begun(link.activity)),
    );
    const { window, ...free } = settled(activity, over, done);
    return {
      ...free,
      // A choice of a window that is over binds nothing any more.
      ...(window !== undefined && later.has(window) && { window }),
      notBefore: Math.max(
        free.notBefore ?? moment,
        activity.place === 'outside' ? moment : -Infinity,
      ),
      after: activity.after.filter((link) => !over.includes(link)),
      work:
        activity.work.kind === 'whole'
          ? activity.work
          : { ...activity.work, done: activity.work.done + (units.get(activity.id) ?? 0) },
    };
  });
}
