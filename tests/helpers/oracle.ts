// The plain way to the best plan: every activity is tried at every step of the clock in every window, and every
// minute is asked on its own whether it may be used. Slow, short, and written without the library's search, ledgers
// or profiles, so that the two can be held against each other.
import { localTimeOf, MINUTE, weekdayOf } from '../../src/calendar/index.js';
import {
  weekdays,
  type AccessWindow,
  type Activity,
  type Availability,
  type Plan,
} from '../../src/model/index.js';
import { lineFaults, meet, mustFollow, withOwnLinks } from './line-check.js';
import type { Placement } from '../../src/planner/fit/index.js';
import type { Objective } from '../../src/planner/search/index.js';

export interface OracleValue {
  readonly unplaced: number;
  readonly unitsOut: number;
  readonly values: Record<Exclude<Objective, 'margins'>, number>;
}

interface Spot {
  readonly window: number;
  readonly start: number;
  readonly end: number;
  readonly units: number;
}

/**
 * The best values for a plan whose every time and duration is a multiple of `step` minutes after the first window's
 * start.
 *
 * `claimed`: a plan whose values are known to be possible; only better ones are looked for, which takes far less
 * time. Its own values are worked out here. That it breaks nothing is for the caller to know.
 *
 * `kept`: placements that are part of every plan looked at. Some plan must hold them without breaking anything.
 */
export function oracle(
  plan: Plan,
  objectives: readonly Objective[],
  step: number,
  claimed?: readonly Placement[],
  kept: readonly Placement[] = [],
): OracleValue {
  const windows = plan.windows.filter((window) => window.status !== 'withdrawn');
  const activities = inOrder(
    withOwnLinks(plan.activities).filter((activity) => left(activity) > 0),
  );
  const base = Math.min(...(windows.length > 0 ? windows : plan.windows).map((w) => w.start));
  const at = (minute: number): number => base + minute * MINUTE;
  const minuteOf = (moment: number): number => (moment - base) / MINUTE;
  const named = objectives.filter((each) => each !== 'margins');

  let lead = 12 * step;
  let tail = 12 * step;
  if (
    !claimed &&
    plan.rules.curfews.length > 0 &&
    activities.some((one) => one.place === 'outside')
  ) {
    // Long enough to get past a day with curfews either way; a claimed plan is only beaten by sooner work.
    lead += 1440;
    tail += 1440;
  }
  for (const activity of activities) {
    for (const link of activity.after) lead += link.gapMinutes;
    if (activity.place === 'outside') lead += visit(activity, left(activity));
    if (activity.notBefore !== undefined) tail = Math.max(tail, minuteOf(activity.notBefore));
  }
  // Outside work may have to be over before a key date that lies before the plan begins.
  const dates = activities.flatMap((one) =>
    !claimed && one.place === 'outside' && one.keyDate !== undefined
      ? [-minuteOf(one.keyDate)]
      : [],
  );
  lead += Math.ceil(Math.max(0, ...dates) / step) * step;
  tail += lead + Math.max(0, ...windows.map((window) => minuteOf(window.end)));

  // Steps that may be used, by activity and window (last row: outside).
  const usable = activities.map((activity) => {
    if (activity.place === 'outside') {
      const open = new Set<number>();
      for (let minute = -lead; minute < tail; minute += step)
        if (!outsideBarred(plan, activity, at(minute))) open.add(minute);
      return [{ window: -1, open }];
    }
    return windows.flatMap((window, index) => {
      if (!accepts(window, activity)) return [];
      const open = new Set<number>();
      for (let minute = minuteOf(window.start); minute < minuteOf(window.end); minute += step)
        if (minuteUsable(plan, window, activity, at(minute))) open.add(minute);
      return [{ window: index, open }];
    });
  });

  const spotsOf = (activity: Activity, placements: readonly Placement[]): Spot[] =>
    placements
      .filter((one) => one.activity === activity.id)
      .map((one) => ({
        window: windows.findIndex((window) => window.id === one.window),
        start: minuteOf(one.from),
        end: minuteOf(one.to),
        units: one.units ?? 1,
      }));
  const settled = activities.map((activity) => spotsOf(activity, kept));
  const spots = settled.map((own) => own.slice());
  let best: { score: number[]; spots: Spot[][] } | undefined;

  const usedAt = (resource: string, minute: number): number => {
    let used = 0;
    activities.forEach((activity, i) => {
      const amount = demand(activity, resource);
      if (amount > 0)
        for (const spot of spots[i]!) if (spot.start <= minute && minute < spot.end) used += amount;
    });
    return used;
  };
  // Of the first `upTo` activities; with `going`, also of what is placed of the next, without what it lacks.
  const score = (upTo: number, going = false): number[] => {
    let unplaced = 0;
    let unitsOut = 0;
    let finish = 0;
    const dues = new Map<string, number>();
    const used = new Set<number>();
    for (let i = 0; i < upTo + Number(going); i += 1) {
      const activity = activities[i]!;
      const out =
        i === upTo ? 0 : left(activity) - spots[i]!.reduce((sum, spot) => sum + spot.units, 0);
      if (out > 0) unplaced += 1;
      unitsOut += out;
      for (const spot of spots[i]!) {
        finish = Math.max(finish, spot.end);
        if (spot.window >= 0) used.add(spot.window);
        if (activity.keyDate !== undefined) {
          const key = `${activity.package} ${activity.keyDate}`;
          const late = spot.end - minuteOf(activity.keyDate);
          dues.set(key, Math.max(dues.get(key) ?? 0, late));
        }
      }
    }
    const values = {
      'key-dates': [...dues.values()].reduce((sum, late) => sum + late, 0),
      finish,
      'fewest-windows': used.size,
    };
    return [unplaced, unitsOut, ...named.map((name) => values[name])];
  };

  if (claimed) {
    activities.forEach((activity, i) => {
      spots[i] = spotsOf(activity, claimed);
    });
    best = { score: score(activities.length), spots: [] };
    settled.forEach((own, i) => (spots[i] = own.slice()));
  }

  const release = (i: number): number => {
    const activity = activities[i]!;
    let from = Number.NEGATIVE_INFINITY;
    if (activity.notBefore !== undefined) from = minuteOf(activity.notBefore);
    for (const link of activity.after) {
      const before = activities.findIndex((one) => one.id === link.activity);
      if (before < 0) continue;
      const own = spots[before]!;
      const done = own.reduce((sum, spot) => sum + spot.units, 0) === left(activities[before]!);
      if (link.from === 'start' ? own.length === 0 : !done) return Number.POSITIVE_INFINITY;
      const moment =
        link.from === 'start'
          ? Math.min(...own.map((spot) => spot.start))
          : Math.max(...own.map((spot) => spot.end));
      from = Math.max(from, moment + link.gapMinutes);
    }
    return from;
  };
  const thereAt = new Map<string, number>();
  const free = (activity: Activity, minute: number): boolean =>
    activity.resources.every((need) => {
      const resource = plan.resources.find((one) => one.id === need.resource);
      if (!resource) return true;
      const key = `${resource.id} ${minute}`;
      let there = thereAt.get(key);
      if (there === undefined) {
        there = 0;
        for (const row of resource.availability)
          if (isThere(row, at(minute), plan.zone)) there += row.capacity;
        thereAt.set(key, there);
      }
      return usedAt(resource.id, minute) + demand(activity, resource.id) <= there;
    });

  const bound = activities.map((opener) => [...mustFollow(plan, opener)]);
  const hasLineState = bound.some((members) => members.length > 0);
  const isWhole = (): boolean => {
    if (!hasLineState) return true;
    // What makes good stands only with what it makes good.
    const stands = (id: string): boolean =>
      activities.some((one, i) => one.id === id && spots[i]!.length > 0);
    const alone = bound.some(
      (members, i) =>
        spots[i]!.reduce((sum, spot) => sum + spot.units, 0) < left(activities[i]!) &&
        members.some(stands),
    );
    if (alone) return false;
    const placements = activities.flatMap((activity, i) =>
      spots[i]!.map((spot) => ({
        activity: activity.id,
        window: windows[spot.window]?.id ?? null,
        from: at(spot.start),
        to: at(spot.end),
        ...(activity.work.kind === 'units' && { units: spot.units }),
      })),
    );
    return lineFaults(plan, placements).length === 0;
  };
  const isTaken = (activity: Activity, spot: Spot): boolean =>
    activities.some(
      (other, j) =>
        other !== activity &&
        (activity.occupies === 'alone' || other.occupies === 'alone') &&
        meet(activity, other) &&
        spots[j]!.some((one) => one.start < spot.end && spot.start < one.end),
    );

  const visitAll = (i: number): void => {
    const now = score(i);
    if (best && compare(now, best.score) >= 0) return;
    if (i === activities.length) {
      if (!isWhole()) return;
      best = { score: now, spots: spots.map((own) => own.slice()) };
      return;
    }
    const from = release(i);
    const here = settled[i]!;
    // What stays may not begin before what it waits for.
    if (here.some((spot) => spot.start < from)) return;
    const wanted = left(activities[i]!) - here.reduce((sum, spot) => sum + spot.units, 0);
    if (from < Number.POSITIVE_INFINITY) place(i, from, wanted);
    else visitAll(i + 1);
  };
  const place = (i: number, from: number, wanted: number): void => {
    const activity = activities[i]!;
    if (wanted > 0) {
      const choices: Spot[] = [];
      for (const { window, open } of usable[i]!)
        for (const start of open.size > 0 ? open : [])
          if (start >= from)
            for (let units = wanted; units >= 1; units -= 1)
              choices.push({ window, start, end: start + visit(activity, units), units });
      choices.sort((a, b) => a.start - b.start);
      for (const choice of choices) {
        // What it would come to is asked first: the minutes cost more to look at.
        spots[i]!.push(choice);
        const hopeful = !best || compare(score(i, true), best.score) < 0;
        spots[i]!.pop();
        if (!hopeful) continue;
        const open = usable[i]!.find((each) => each.window === choice.window)!.open;
        let good =
          !settled[i]!.some((one) => one.start < choice.end && choice.start < one.end) &&
          !isTaken(activity, choice);
        for (let minute = choice.start; good && minute < choice.end; minute += step)
          good = open.has(minute) && free(activity, minute);
        if (!good) continue;
        spots[i]!.push(choice);
        place(i, choice.end, wanted - choice.units);
        spots[i]!.pop();
      }
    }
    // Leave the rest out.
    visitAll(i + 1);
  };
  visitAll(0);
  const [unplaced, unitsOut, ...rest] = best!.score;
  return {
    unplaced: unplaced!,
    unitsOut: unitsOut!,
    values: Object.fromEntries(named.map((name, i) => [name, rest[i]!])) as OracleValue['values'],
  };
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return 0;
}

export function left({ work }: Activity): number {
  return work.kind === 'whole' ? 1 : work.units - work.done;
}

export function visit({ work }: Activity, units: number): number {
  return work.kind === 'whole'
    ? work.minutes
    : work.setUpMinutes + units * work.minutesPerUnit + work.makeSafeMinutes;
}

export function demand(activity: Activity, resource: string): number {
  return activity.resources.reduce(
    (sum, need) => sum + (need.resource === resource ? need.amount : 0),
    0,
  );
}

/** Those waited for before those that wait. */
function inOrder(activities: readonly Activity[]): Activity[] {
  const placed: Activity[] = [];
  const waits = (activity: Activity): boolean =>
    activity.after.some(
      (link) =>
        activities.some((one) => one.id === link.activity) &&
        !placed.some((one) => one.id === link.activity),
    );
  while (placed.length < activities.length)
    placed.push(activities.find((one) => !placed.includes(one) && !waits(one))!);
  return placed;
}

export function accepts(window: AccessWindow, activity: Activity): boolean {
  const { extent } = activity;
  return (
    (activity.window === undefined || activity.window === window.id) &&
    (window.lines.length === 0 || activity.lines.every((line) => window.lines.includes(line))) &&
    (!extent ||
      !window.extent ||
      (window.extent.from <= extent.from && extent.to <= window.extent.to)) &&
    activity.isolation.every((section) => window.isolation.some((one) => one.section === section))
  );
}

/** Lead-in counted forward, lead-out and margin back, every step in series; curfews by the wall clock. */
export function minuteUsable(
  plan: Plan,
  window: AccessWindow,
  activity: Activity,
  at: number,
): boolean {
  const sum = (steps: typeof plan.rules.leadIn): number =>
    steps.reduce(
      (total, step) =>
        step.when === 'always' ||
        (step.when === 'isolation' && activity.isolation.length > 0) ||
        (step.when === 'loud' && activity.loud)
          ? total + step.minutes
          : total,
      0,
    );
  const { leadIn, leadOut, margin } = plan.rules;
  if (at < window.start + sum(leadIn) * MINUTE) return false;
  if (at >= window.end - (sum(leadOut) + margin.minutes) * MINUTE) return false;
  return !inAnyCurfew(plan, activity, at, window.zone);
}

function outsideBarred(plan: Plan, activity: Activity, at: number): boolean {
  return inAnyCurfew(plan, activity, at, plan.zone);
}

function inAnyCurfew(plan: Plan, activity: Activity, at: number, zone: string): boolean {
  return plan.rules.curfews.some((curfew) => {
    if (curfew.bars === 'loud' && !activity.loud) return false;
    const { hour, minute } = localTimeOf(at, zone);
    const now = hour * 60 + minute;
    const [from, to] = [curfew.from, curfew.to].map(
      (clock) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3)),
    );
    const today = weekdayOf(at, zone);
    const on = (day: number): boolean =>
      !curfew.days || curfew.days.some((name) => weekdays.indexOf(name) + 1 === day);
    const yesterday = today === 1 ? 7 : today - 1;
    return from! < to!
      ? now >= from! && now < to! && on(today)
      : (now >= from! && on(today)) || (now < to! && on(yesterday));
  });
}

export function isThere(row: Availability, at: number, zone: string): boolean {
  if (row.from !== undefined && at < row.from) return false;
  if (row.to !== undefined && at >= row.to) return false;
  if (row.dailyFromMinute === undefined || row.dailyToMinute === undefined) return true;
  const { hour, minute } = localTimeOf(at, zone);
  const now = hour * 60 + minute;
  const { dailyFromMinute: from, dailyToMinute: to } = row;
  return from < to ? now >= from && now < to : now >= from || now < to;
}
