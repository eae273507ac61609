// What of a plan made before no longer holds. This finds what has to move; whether the plan that comes of it is right is
// for the room `verify` to say, which shares no code with this one.
import {
  addMinutes,
  contains,
  localTimeOf,
  MINUTE,
  minutesBetween,
  overlaps,
  type Instant,
} from '../../calendar/index.js';
import {
  needsKey,
  needsOf,
  unitsLeft,
  type AccessWindow,
  type Activity,
  type Availability,
  type Plan,
  type Resource,
} from '../../model/index.js';
import { ledgerOf, type Ledger } from '../../rules/index.js';
import type { Placement } from '../fit/types.js';
import { closedFaults, curingFaults, inCurfew, type Breach } from './site-breaches.js';

/** Every constraint of the plan that the placements break; empty when they keep them all. */
export function breachesOf(plan: Plan, placements: readonly Placement[]): Breach[] {
  const byActivity = new Map<string, Placement[]>();
  for (const placement of placements) {
    const known = byActivity.get(placement.activity);
    if (known) known.push(placement);
    else byActivity.set(placement.activity, [placement]);
  }
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const place = placeChecker(plan);
  const faults: Breach[] = [];
  for (const [id, own] of byActivity) {
    const activity = activities.get(id);
    if (!activity) {
      faults.push({ code: 'unknown-activity', activity: id, text: `the plan has no ${id}` });
      continue;
    }
    own.sort((a, b) => a.from - b.from || a.to - b.to);
    faults.push(...amountFaults(activity, own));
    for (const placement of own)
      faults.push(
        ...dateFaults(activity, placement),
        ...place(activity, placement),
        ...closedFaults(plan, activity, placement),
      );
    faults.push(
      ...linkFaults(activity, own[0]!, activities, byActivity),
      ...curingFaults(plan, activity, own[0]!, byActivity),
    );
  }
  for (const resource of plan.resources)
    faults.push(...resourceFaults(plan, resource, activities, placements));
  return faults;
}

/** The right minutes, the right number of visits and units, none at the same time as another. */
function amountFaults(activity: Activity, own: readonly Placement[]): Breach[] {
  const faults: Breach[] = [];
  const say = (code: string, text: string): void =>
    void faults.push({ code, activity: activity.id, text: `${activity.id} ${text}` });
  const { work } = activity;
  if (unitsLeft(work) === 0) say('already-done', 'is placed though nothing of it is left');
  if (work.kind === 'whole' && own.length > 1) say('split', 'is placed more than once');
  let units = 0;
  for (const placement of own) {
    const taken = minutesBetween(placement.from, placement.to);
    const visit = placement.units ?? 0;
    if (work.kind === 'units') {
      if (!Number.isInteger(visit) || visit < 1) say('units', `has a visit of ${visit} units`);
      units += visit;
    }
    const needed =
      work.kind === 'whole'
        ? work.minutes
        : work.setUpMinutes + visit * work.minutesPerUnit + work.makeSafeMinutes;
    if (taken !== needed || (placement.to - placement.from) % MINUTE !== 0)
      say('minutes', `is given ${taken} minutes and takes ${needed}`);
  }
  if (work.kind === 'units' && units > unitsLeft(work))
    say('units', `is given ${units} units and has ${unitsLeft(work)} left`);
  own.forEach((placement, i) => {
    if (i > 0 && placement.from < own[i - 1]!.to) say('overlap', 'has two visits at the same time');
  });
  return faults;
}

function dateFaults(activity: Activity, placement: Placement): Breach[] {
  if (activity.notBefore === undefined || placement.from >= activity.notBefore) return [];
  return [
    { code: 'not-before', activity: activity.id, text: `${activity.id} begins before it may` },
  ];
}

/** Whether a placement lies where its activity can be done. Ledgers are worked out once a window and needs. */
function placeChecker(plan: Plan): (activity: Activity, placement: Placement) => Breach[] {
  const windows = new Map(plan.windows.map((window) => [window.id, window]));
  const ledgers = new Map<string, Ledger>();
  const ledgerFor = (window: AccessWindow, activity: Activity): Ledger => {
    const key = `${needsKey(needsOf(activity))} ${window.id}`;
    let ledger = ledgers.get(key);
    if (!ledger) ledgers.set(key, (ledger = ledgerOf(window, needsOf(activity), plan.rules)));
    return ledger;
  };
  return (activity, placement) => {
    const fault = (code: string, text: string): Breach => ({
      code,
      activity: activity.id,
      text: `${activity.id} ${text}`,
    });
    if (activity.place === 'outside') {
      if (placement.window !== null) return [fault('place', 'is outside work and needs no window')];
      const curfew = outsideCurfew(plan, activity, placement);
      return curfew ? [fault('curfew', `goes on in the curfew "${curfew}"`)] : [];
    }
    if (placement.window === null) return [fault('place', 'is inside work and has no window')];
    const window = windows.get(placement.window);
    if (!window)
      return [fault('unknown-window', `is in ${placement.window}, which the plan has not`)];
    const faults: Breach[] = [];
    if (window.status === 'withdrawn')
      faults.push(fault('withdrawn', `is in ${window.id}, which is withdrawn`));
    if (activity.window !== undefined && activity.window !== window.id)
      faults.push(fault('fixed-elsewhere', `is fixed in ${activity.window}`));
    if (window.lines.length > 0)
      for (const line of activity.lines)
        if (!window.lines.includes(line))
          faults.push(fault('line', `needs ${line}, which ${window.id} leaves open`));
    const { extent } = activity;
    if (extent && window.extent)
      if (extent.from < window.extent.from || extent.to > window.extent.to)
        faults.push(fault('extent', `reaches outside ${window.id}`));
    for (const section of activity.isolation)
      if (!window.isolation.some((booked) => booked.section === section))
        faults.push(fault('isolation', `needs ${section} dead, which ${window.id} does not book`));
    const ledger = ledgerFor(window, activity);
    const time = { start: placement.from, end: placement.to };
    if (!ledger.usable.some((usable) => contains(usable, time))) {
      const rows = ledger.rows.filter((row) => row.kind !== 'usable' && overlaps(row, time));
      const kinds = new Set(rows.map((row) => row.kind));
      if (placement.from < window.start || placement.to > window.end)
        faults.push(fault('outside-window', `is not inside ${window.id}`));
      for (const kind of kinds) faults.push(fault(kind, `takes time of ${kind} in ${window.id}`));
      if (kinds.size === 0 && faults.length === 0)
        faults.push(fault('not-usable', `is in time of ${window.id} that is not usable`));
    }
    return faults;
  };
}

/** The name of a curfew in which outside work goes on, minute by minute on the wall clock. */
function outsideCurfew(plan: Plan, activity: Activity, placement: Placement): string | undefined {
  const barring = plan.rules.curfews.filter((curfew) => curfew.bars === 'all' || activity.loud);
  if (barring.length === 0) return undefined;
  for (let at = placement.from; at < placement.to; at = addMinutes(at, 1))
    for (const curfew of barring) if (inCurfew(curfew, at, plan.zone)) return curfew.name;
  return undefined;
}

function linkFaults(
  activity: Activity,
  first: Placement,
  activities: ReadonlyMap<string, Activity>,
  placed: ReadonlyMap<string, readonly Placement[]>,
): Breach[] {
  return activity.after.flatMap((link): Breach[] => {
    const before = activities.get(link.activity);
    if (!before || unitsLeft(before.work) === 0) return [];
    const own = placed.get(link.activity) ?? [];
    const what = link.from === 'start' ? 'the start' : 'the finish';
    const text = `${activity.id} begins before ${what} of ${link.activity} and ${link.gapMinutes} minutes`;
    const fault = { code: 'link', activity: activity.id, text };
    if (own.length === 0) return [fault];
    if (link.from === 'start') {
      const began = Math.min(...own.map((placement) => placement.from));
      return first.from >= addMinutes(began, link.gapMinutes) ? [] : [fault];
    }
    const units = own.reduce((sum, placement) => sum + (placement.units ?? 1), 0);
    const ended = Math.max(...own.map((placement) => placement.to));
    return units >= unitsLeft(before.work) && first.from >= addMinutes(ended, link.gapMinutes)
      ? []
      : [fault];
  });
}

/** Never more of a resource in use than is there, looked at between all moments at which either can change. */
function resourceFaults(
  plan: Plan,
  resource: Resource,
  activities: ReadonlyMap<string, Activity>,
  placements: readonly Placement[],
): Breach[] {
  const uses = placements.flatMap((placement) => {
    const needs = activities.get(placement.activity)?.resources ?? [];
    let amount = 0;
    for (const need of needs) if (need.resource === resource.id) amount += need.amount;
    return amount > 0 && placement.to > placement.from ? [{ ...placement, amount }] : [];
  });
  const moments = new Set(uses.flatMap((use) => [use.from, use.to]));
  for (const row of resource.availability) {
    if (row.from !== undefined) moments.add(row.from);
    if (row.to !== undefined) moments.add(row.to);
  }
  const daily = resource.availability.some(
    (row) => row.dailyFromMinute !== undefined || row.dailyToMinute !== undefined,
  );
  const sorted = [...moments].sort((a, b) => a - b);
  const starts = uses.toSorted((a, b) => a.from - b.from);
  let next = 0;
  let going: typeof uses = [];
  const faults = new Map<string, Breach>();
  sorted.forEach((from, i) => {
    const to = sorted[i + 1];
    going = going.filter((item) => item.to > from);
    while (next < starts.length && starts[next]!.from <= from) {
      going.push(starts[next]!);
      next += 1;
    }
    if (to === undefined || going.length === 0) return;
    const used = going.reduce((sum, item) => sum + item.amount, 0);
    const step = daily ? MINUTE : to - from;
    for (let at = from; at < to; at += step)
      if (availableAt(resource, at, plan.zone) < used) {
        for (const item of going)
          faults.set(item.activity, {
            code: 'resource',
            activity: item.activity,
            text: `${item.activity} and what goes on beside it use ${used} of ${resource.id}, more than is there`,
          });
        break;
      }
  });
  return [...faults.values()];
}

/** How much of a resource is there at a moment. */
export function availableAt(resource: Resource, at: Instant, zone: string): number {
  let sum = 0;
  for (const row of resource.availability) if (isThere(row, at, zone)) sum += row.capacity;
  return sum;
}

function isThere(row: Availability, at: Instant, zone: string): boolean {
  if (row.from !== undefined && at < row.from) return false;
  if (row.to !== undefined && at >= row.to) return false;
  if (row.dailyFromMinute === undefined && row.dailyToMinute === undefined) return true;
  const { hour, minute } = localTimeOf(at, zone);
  const now = hour * 60 + minute;
  const from = row.dailyFromMinute ?? 0;
  const to = row.dailyToMinute ?? 1440;
  return from < to ? now >= from && now < to : now >= from || now < to;
}
