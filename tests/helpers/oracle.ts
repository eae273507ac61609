// The plain way to the best plan: every activity is tried at every step of the clock in every window, and every
// minute is asked on its own whether it may be used. Slow, short, and written without the library's search, ledgers
// or profiles, so that the two can be held against each other.
import { MINUTE } from '../../src/calendar/index.js';
import type { Activity, Plan } from '../../src/model/index.js';
import { lineFaults, meet, mustFollow, openFaults, withOwnLinks } from './line-check.js';
import {
  accepts,
  demand,
  isThere,
  left,
  minuteUsable,
  outsideBarred,
  visit,
} from './plain-rules.js';
import type { Placement } from '../../src/planner/fit/index.js';
import type { Objective } from '../../src/planner/search/index.js';

export interface OracleValue {
  readonly unplaced: number;
  readonly unitsOut: number;
  readonly values: Record<Exclude<Objective, 'margins'>, number>;
}

interface Least {
  readonly out: number;
  readonly end: number;
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
    activities.some((activity) => activity.place === 'outside')
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
  const dates = activities.flatMap((activity) =>
    !claimed && activity.place === 'outside' && activity.keyDate !== undefined
      ? [-minuteOf(activity.keyDate)]
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
      .filter((placement) => placement.activity === activity.id)
      .map((placement) => ({
        window: windows.findIndex((window) => window.id === placement.window),
        start: minuteOf(placement.from),
        end: minuteOf(placement.to),
        units: placement.units ?? 1,
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
  /** What each activity comes to at the least, whatever else is done: units that find no time, and its finish. */
  let least: readonly Least[] = activities.map(() => ({ out: 0, end: Number.NEGATIVE_INFINITY }));
  // Of the first `upTo` activities, with the least that the others come to.
  const score = (upTo: number): number[] => {
    let unplaced = 0;
    let unitsOut = 0;
    let finish = 0;
    const dues = new Map<string, number>();
    const used = new Set<number>();
    activities.forEach((activity, i) => {
      const out =
        i < upTo
          ? left(activity) - spots[i]!.reduce((sum, spot) => sum + spot.units, 0)
          : least[i]!.out;
      if (out > 0) unplaced += 1;
      unitsOut += out;
      const ends = spots[i]!.map((spot) => spot.end);
      if (i >= upTo) ends.push(least[i]!.end);
      for (const end of ends) {
        finish = Math.max(finish, end);
        if (activity.keyDate !== undefined) {
          const key = `${activity.package} ${activity.keyDate}`;
          const late = end - minuteOf(activity.keyDate);
          dues.set(key, Math.max(dues.get(key) ?? 0, late));
        }
      }
      for (const spot of spots[i]!) if (spot.window >= 0) used.add(spot.window);
    });
    // With no more out than that, each of the others that is inside is done in some window of its own choice of them.
    const taken = new Set(used);
    for (let i = upTo; i < activities.length; i += 1) {
      const own = usable[i]!.map(({ window }) => window);
      if (least[i]!.out > 0 || own.includes(-1) || own.some((window) => taken.has(window)))
        continue;
      for (const window of own) taken.add(window);
      used.add(own[0]!);
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

  /** From when it may be done, where it is known when what it waits for begins and is over; never: infinity. */
  const earliest = (
    activity: Activity,
    begun: readonly number[],
    done: readonly number[],
  ): number => {
    let from = Number.NEGATIVE_INFINITY;
    if (activity.notBefore !== undefined) from = minuteOf(activity.notBefore);
    for (const link of activity.after) {
      const before = activities.findIndex((item) => item.id === link.activity);
      if (before < 0) continue;
      const moment = (link.from === 'start' ? begun : done)[before]!;
      from = Math.max(from, moment + link.gapMinutes);
    }
    return from;
  };
  const release = (i: number): number =>
    earliest(
      activities[i]!,
      spots.map((own) => Math.min(...own.map((spot) => spot.start))),
      spots.map((own, before) =>
        own.reduce((sum, spot) => sum + spot.units, 0) === left(activities[before]!)
          ? Math.max(...own.map((spot) => spot.end))
          : Number.POSITIVE_INFINITY,
      ),
    );
  const thereAt = new Map<string, number>();
  const free = (activity: Activity, minute: number): boolean =>
    activity.resources.every((need) => {
      const resource = plan.resources.find((item) => item.id === need.resource);
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

  const roomFor = (i: number, { start, end }: Pick<Spot, 'start' | 'end'>, open: Set<number>) => {
    for (let minute = start; minute < end; minute += step)
      if (!open.has(minute) || !free(activities[i]!, minute)) return false;
    return true;
  };
  // What must stand or fall together, by the place of the last of it in the order in which all is placed.
  const blocks = plan.activities.flatMap((opener) => {
    const members = mustFollow(plan, opener);
    const places = [opener.id, ...members].map((id) =>
      activities.findIndex((activity) => activity.id === id),
    );
    return members.size > 0 ? [{ opener, members, last: Math.max(...places) }] : [];
  });
  // Only what is kept stands while this is worked out: nothing that is placed later leaves more room.
  const notWhole = new Set<string>();
  const notBegun = new Set<string>();
  const leastOf = (): Least[] => {
    const begins: number[] = [];
    const over: number[] = [];
    return activities.map((activity, i): Least => {
      const here = settled[i]!;
      const wanted = left(activity) - here.reduce((sum, spot) => sum + spot.units, 0);
      const kept = Math.max(...here.map((spot) => spot.end));
      let start = Math.min(...here.map((spot) => spot.start));
      let end = kept;
      let out = 0;
      if (wanted > 0) {
        const from = earliest(activity, begins, over);
        const first = Math.min(
          ...usable[i]!.flatMap(({ open }) =>
            [...open].filter(
              (at) => at >= from && roomFor(i, { start: at, end: at + visit(activity, 1) }, open),
            ),
          ),
        );
        const isNever = notBegun.has(activity.id) || first === Number.POSITIVE_INFINITY;
        // Where one unit finds no time none does.
        out = isNever ? wanted : Number(notWhole.has(activity.id));
        if (!isNever) start = Math.min(start, first);
        end = Math.max(kept, first + visit(activity, wanted));
      }
      begins.push(start);
      over.push(out > 0 ? Number.POSITIVE_INFINITY : end);
      return { out, end: out > 0 ? kept : end };
    });
  };
  for (let known = -1; known < notWhole.size + notBegun.size;) {
    known = notWhole.size + notBegun.size;
    least = leastOf();
    const isOut = (id: string): boolean =>
      least.some(({ out }, i) => out > 0 && activities[i]!.id === id);
    for (const { opener, members } of blocks)
      if ([opener.id, ...members].some(isOut)) {
        notWhole.add(opener.id);
        for (const id of members) notBegun.add(id);
      }
  }

  const hasLineState = blocks.length > 0;
  const placed = (): Placement[] =>
    activities.flatMap((activity, i) =>
      spots[i]!.map((spot) => ({
        activity: activity.id,
        window: windows[spot.window]?.id ?? null,
        from: at(spot.start),
        to: at(spot.end),
        ...(activity.work.kind === 'units' && { units: spot.units }),
      })),
    );
  /** Of all that must stand or fall together and ends with one activity, all stands or none. */
  const isMadeGood = (last: number): boolean => {
    const here = blocks.filter((block) => block.last === last);
    if (here.length === 0) return true;
    const placements = placed();
    const unitsOf = (id: string): number =>
      placements.reduce(
        (sum, placement) => sum + (placement.activity === id ? (placement.units ?? 1) : 0),
        0,
      );
    return here.every(
      ({ opener, members }) =>
        openFaults(plan, opener, placements).length === 0 &&
        // What makes good stands only with what it makes good.
        (unitsOf(opener.id) >= left(opener) || ![...members].some((id) => unitsOf(id) > 0)),
    );
  };
  const isTaken = (activity: Activity, spot: Spot): boolean =>
    activities.some(
      (other, j) =>
        other !== activity &&
        (activity.occupies === 'alone' || other.occupies === 'alone') &&
        meet(activity, other) &&
        spots[j]!.some((item) => item.start < spot.end && spot.start < item.end),
    );

  const visitAll = (i: number): void => {
    const now = score(i);
    if (best && compare(now, best.score) >= 0) return;
    if (!isMadeGood(i - 1)) return;
    if (i === activities.length) {
      if (hasLineState && lineFaults(plan, placed()).length > 0) return;
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
        const hopeful = !best || compare(score(i), best.score) < 0;
        spots[i]!.pop();
        if (!hopeful) continue;
        const open = usable[i]!.find((each) => each.window === choice.window)!.open;
        const good =
          !settled[i]!.some((spot) => spot.start < choice.end && choice.start < spot.end) &&
          !isTaken(activity, choice) &&
          roomFor(i, choice, open);
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

/** Those waited for before those that wait; outside work that nothing waits for last, as it goes almost anywhere. */
function inOrder(activities: readonly Activity[]): Activity[] {
  const isFree = ({ id, place }: Activity): boolean =>
    place === 'outside' &&
    !activities.some(({ after }) => after.some((link) => link.activity === id));
  const sooner = activities.toSorted((a, b) => Number(isFree(a)) - Number(isFree(b)));
  const placed: Activity[] = [];
  const waits = (activity: Activity): boolean =>
    activity.after.some(
      (link) =>
        activities.some((item) => item.id === link.activity) &&
        !placed.some((item) => item.id === link.activity),
    );
  while (placed.length < activities.length)
    placed.push(sooner.find((activity) => !placed.includes(activity) && !waits(activity))!);
  return placed;
}
