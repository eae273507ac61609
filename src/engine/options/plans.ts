import { MINUTE, type Instant } from '../../calendar/index.js';
import type { Placement } from '../../fit/types.js';
import {
  unitsLeft,
  type AccessWindow,
  type Activity,
  type Availability,
  type Plan,
  type Resource,
} from '../../model/index.js';
import { allocate, replan, verify } from '../../schedule/index.js';
import type { Allocation, KeyDateForecast, Unplaced } from '../../schedule/types.js';

/** How long the scheduler may take, and how it is stopped. */
export interface SearchTime {
  readonly seconds: number;
  readonly seed: number;
  readonly clock: () => number;
  readonly shouldStop: () => boolean;
}

/** Placements with what could not be placed and the key dates. */
export interface Planned {
  readonly placements: readonly Placement[];
  readonly unplaced: readonly Unplaced[];
  readonly keyDates: readonly KeyDateForecast[];
}

/** Units of each activity that are placed in a window; 1 for a whole piece of work. */
export function unitsIn(
  window: string,
  placements: readonly Placement[],
): ReadonlyMap<string, number> {
  const units = new Map<string, number>();
  for (const one of placements)
    if (one.window === window)
      units.set(one.activity, (units.get(one.activity) ?? 0) + (one.units ?? 1));
  return units;
}

/**
 * The placements with the last units of one activity taken out of a window; what is left of its visits keeps its
 * place. A visit of which nothing is left is gone.
 */
export function withoutUnits(
  placements: readonly Placement[],
  window: string,
  activity: Activity,
  units: number,
): readonly Placement[] {
  const { work } = activity;
  if (work.kind !== 'units') throw new RangeError(`${activity.id} is no repeated work`);
  let left = units;
  const visits = placements
    .filter((one) => one.window === window && one.activity === activity.id)
    .sort((a, b) => b.from - a.from);
  const shorter = new Map<Placement, Placement | null>();
  for (const visit of visits) {
    const out = Math.min(left, visit.units ?? 0);
    left -= out;
    const keep = (visit.units ?? 0) - out;
    const minutes = work.setUpMinutes + keep * work.minutesPerUnit + work.makeSafeMinutes;
    if (out > 0)
      shorter.set(
        visit,
        keep === 0 ? null : { ...visit, units: keep, to: visit.from + minutes * MINUTE },
      );
  }
  return placements.flatMap((one) => {
    const now = shorter.get(one);
    return now === undefined ? [one] : now === null ? [] : [now];
  });
}

/** The longest that one window's work is planned anew, in seconds: it is small, and every option asks for it. */
const REFIT_SECONDS = 0.4;

/** One window's own work planned anew so that it is clear as early as can be, everything else staying as it is. */
export function refit(
  plan: Plan,
  window: AccessWindow,
  units: ReadonlyMap<string, number>,
  others: readonly Placement[],
  time: SearchTime,
): Pick<Planned, 'placements' | 'unplaced'> {
  const ids = new Set(units.keys());
  const activities = plan.activities
    .filter((one) => ids.has(one.id))
    .map((one): Activity => {
      const waits = one.after.filter((link) => !ids.has(link.activity));
      return {
        ...settled(one, waits, others),
        after: one.after.filter((link) => ids.has(link.activity)),
        work:
          one.work.kind === 'whole'
            ? one.work
            : { ...one.work, units: units.get(one.id)!, done: 0 },
        window: window.id,
      };
    });
  const found = allocate(
    {
      ...plan,
      windows: [window],
      activities,
      resources: lessUsed(plan, others, (one) => one.from < window.end && one.to > window.start),
    },
    { ...time, seconds: Math.min(time.seconds, REFIT_SECONDS), first: 'finish' },
  );
  return { placements: found.placements, unplaced: found.unplaced };
}

/** When the last of the work in a window ends; the window's start when there is none. */
export function clearAt(window: AccessWindow, placements: readonly Placement[]): Instant {
  return placements.reduce(
    (last, one) => (one.window === window.id ? Math.max(last, one.to) : last),
    window.start,
  );
}

/**
 * A plan in which what lies in windows that begin before `moment` stays and work left over finds its place after it.
 *
 * Placements after the moment stay too, if that leaves nothing without a place; then all but those of `free`
 * activities; then as many packages as can.
 */
export function planFurther(
  plan: Plan,
  moment: Instant,
  placements: readonly Placement[],
  free: ReadonlySet<string>,
  before: Allocation,
  time: SearchTime,
): Planned {
  const later = new Set(plan.windows.filter((one) => one.start >= moment).map((one) => one.id));
  const isLater = (one: Placement): boolean =>
    one.window === null ? one.from >= moment : later.has(one.window);
  const done = placements.filter((one) => !isLater(one));
  const after = placements.filter(isLater);
  const suffix: Plan = {
    ...plan,
    windows: plan.windows.filter((one) => later.has(one.id)),
    activities: whatIsLeft(plan, done, moment, later),
    resources: lessUsed(plan, done, (one) => one.to > moment),
  };
  const known = new Set(before.unplaced.map((one) => one.activity));
  const lost = (one: Allocation): readonly Unplaced[] =>
    one.unplaced.filter((each) => !known.has(each.activity));
  const good = (one: Allocation): boolean => lost(one).length === 0 && one.certificate.verified;
  const third = { ...time, seconds: time.seconds / 3 };
  const freer = after.filter((one) => !free.has(one.activity));
  let found = allocate(suffix, { ...third, keep: after });
  if (!good(found) && freer.length < after.length)
    found = allocate(suffix, { ...third, keep: freer });
  if (!good(found)) {
    const other = replan(suffix, { ...before, placements: freer }, third).allocation;
    if (!found.certificate.verified || lost(other).length < lost(found).length) found = other;
  }
  return {
    placements: [...done, ...found.placements],
    unplaced: lost(found),
    keyDates: found.keyDates,
  };
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
    .flatMap((one) =>
      one.after
        .filter((link) => link.activity === activity.id && link.from === 'finish')
        .flatMap((link) =>
          placements
            .filter((each) => each.activity === one.id)
            .map((each) => each.from - link.gapMinutes * MINUTE),
        ),
    )
    .reduce((first, at) => Math.min(first, at), Infinity);
  const windows = plan.windows
    .filter((one) => one.status !== 'withdrawn' && one.start >= moment && one.start < limit)
    .sort((a, b) => a.start - b.start);
  let made = placements;
  let left = units;
  for (const window of windows) {
    if (left === 0) break;
    const found = refit(plan, window, new Map([[activity.id, left]]), made, time).placements;
    const some = found.filter((one) => one.to <= limit);
    if (some.length === 0 || some.length < found.length) continue;
    // What stays must still keep to the plan: two visits at once, for one, are no visits.
    const next = [...made, ...some];
    if (verify(plan, next).some((fault) => fault.activity === activity.id)) continue;
    made = next;
    left -= some.reduce((sum, one) => sum + (one.units ?? 1), 0);
  }
  return left === 0 ? made : null;
}

/** The activities with work left once the placements are done, free of what they no longer wait for. */
function whatIsLeft(
  plan: Plan,
  done: readonly Placement[],
  moment: Instant,
  later: ReadonlySet<string>,
): readonly Activity[] {
  const units = new Map<string, number>();
  for (const one of done)
    units.set(one.activity, (units.get(one.activity) ?? 0) + (one.units ?? 1));
  const left = plan.activities
    .map((one) => ({ one, left: unitsLeft(one.work) - (units.get(one.id) ?? 0) }))
    .filter((each) => each.left > 0);
  const ids = new Set(left.map((each) => each.one.id));
  const begun = (id: string): boolean => (units.get(id) ?? 0) > 0;
  return left.map(({ one }): Activity => {
    const over = one.after.filter(
      (link) => !ids.has(link.activity) || (link.from === 'start' && begun(link.activity)),
    );
    const { window, ...free } = settled(one, over, done);
    return {
      ...free,
      // A choice of a window that is over binds nothing any more.
      ...(window !== undefined && later.has(window) && { window }),
      notBefore: Math.max(free.notBefore ?? moment, one.place === 'outside' ? moment : -Infinity),
      after: one.after.filter((link) => !over.includes(link)),
      work:
        one.work.kind === 'whole'
          ? one.work
          : { ...one.work, done: one.work.done + (units.get(one.id) ?? 0) },
    };
  });
}

/** The activity bound to a date in place of links to work that is placed. */
function settled(
  one: Activity,
  links: Activity['after'],
  placements: readonly Placement[],
): Activity {
  const dates = links.flatMap((link) => {
    const own = placements.filter((each) => each.activity === link.activity);
    if (own.length === 0) return [];
    const from =
      link.from === 'start'
        ? Math.min(...own.map((each) => each.from))
        : Math.max(...own.map((each) => each.to));
    return [from + link.gapMinutes * MINUTE];
  });
  if (dates.length === 0) return one;
  return { ...one, notBefore: Math.max(one.notBefore ?? -Infinity, ...dates) };
}

/** What is there of each resource beside what some placements use. */
function lessUsed(
  plan: Plan,
  placements: readonly Placement[],
  counts: (one: Placement) => boolean,
): readonly Resource[] {
  const needs = new Map(plan.activities.map((one) => [one.id, one.resources]));
  const used = placements.filter(counts);
  return plan.resources.map((resource) => {
    const taken = used.flatMap((one): Availability[] => {
      const amount = needs.get(one.activity)?.find((need) => need.resource === resource.id)?.amount;
      return amount ? [{ capacity: -amount, from: one.from, to: one.to }] : [];
    });
    return taken.length === 0
      ? resource
      : { ...resource, availability: [...resource.availability, ...taken] };
  });
}
