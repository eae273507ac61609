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
  type Worded,
} from '../../model/index.js';
import { ledgerOf, type Ledger } from '../../rules/index.js';
import type { Placement } from '../fit/types.js';
import { sayRepair } from './repair-sentences.js';
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
      faults.push({
        code: 'unknown-activity',
        activity: id,
        ...sayRepair('plan-has-no', { activity: id }),
      });
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
  const { id } = activity;
  const say = (code: string, worded: Worded): void =>
    void faults.push({ code, activity: id, ...worded });
  const { work } = activity;
  if (unitsLeft(work) === 0) say('already-done', sayRepair('placed-though-done', { activity: id }));
  if (work.kind === 'whole' && own.length > 1)
    say('split', sayRepair('placed-twice', { activity: id }));
  let units = 0;
  for (const placement of own) {
    const taken = minutesBetween(placement.from, placement.to);
    const visit = placement.units ?? 0;
    if (work.kind === 'units') {
      if (!Number.isInteger(visit) || visit < 1)
        say('units', sayRepair('visit-of-units', { activity: id, units: visit }));
      units += visit;
    }
    const needed =
      work.kind === 'whole'
        ? work.minutes
        : work.setUpMinutes + visit * work.minutesPerUnit + work.makeSafeMinutes;
    if (taken !== needed || (placement.to - placement.from) % MINUTE !== 0)
      say('minutes', sayRepair('given-and-takes', { activity: id, taken, needed }));
  }
  if (work.kind === 'units' && units > unitsLeft(work))
    say('units', sayRepair('given-and-left', { activity: id, units, left: unitsLeft(work) }));
  own.forEach((placement, i) => {
    if (i > 0 && placement.from < own[i - 1]!.to)
      say('overlap', sayRepair('two-visits', { activity: id }));
  });
  return faults;
}

function dateFaults(activity: Activity, placement: Placement): Breach[] {
  if (activity.notBefore === undefined || placement.from >= activity.notBefore) return [];
  return [
    {
      code: 'not-before',
      activity: activity.id,
      ...sayRepair('before-it-may', { activity: activity.id }),
    },
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
    const { id } = activity;
    const fault = (code: string, worded: Worded): Breach => ({ code, activity: id, ...worded });
    if (activity.place === 'outside') {
      if (placement.window !== null)
        return [fault('place', sayRepair('needs-no-window', { activity: id }))];
      const curfew = outsideCurfew(plan, activity, placement);
      return curfew ? [fault('curfew', sayRepair('in-curfew', { activity: id, curfew }))] : [];
    }
    if (placement.window === null)
      return [fault('place', sayRepair('has-no-window', { activity: id }))];
    const window = windows.get(placement.window);
    if (!window)
      return [
        fault(
          'unknown-window',
          sayRepair('window-not-in-plan', { activity: id, window: placement.window }),
        ),
      ];
    const here = { activity: id, window: window.id };
    const faults: Breach[] = [];
    if (window.status === 'withdrawn')
      faults.push(fault('withdrawn', sayRepair('in-withdrawn', here)));
    if (activity.window !== undefined && activity.window !== window.id)
      faults.push(
        fault(
          'fixed-elsewhere',
          sayRepair('is-fixed-in', { activity: id, window: activity.window }),
        ),
      );
    if (window.lines.length > 0)
      for (const line of activity.lines)
        if (!window.lines.includes(line))
          faults.push(fault('line', sayRepair('line-left-open', { ...here, line })));
    const { extent } = activity;
    if (extent && window.extent)
      if (extent.from < window.extent.from || extent.to > window.extent.to)
        faults.push(fault('extent', sayRepair('reaches-outside', here)));
    for (const section of activity.isolation)
      if (!window.isolation.some((booked) => booked.section === section))
        faults.push(fault('isolation', sayRepair('section-not-booked', { ...here, section })));
    const ledger = ledgerFor(window, activity);
    const time = { start: placement.from, end: placement.to };
    if (!ledger.usable.some((usable) => contains(usable, time))) {
      const rows = ledger.rows.filter((row) => row.kind !== 'usable' && overlaps(row, time));
      const kinds = new Set(rows.map((row) => row.kind));
      if (placement.from < window.start || placement.to > window.end)
        faults.push(fault('outside-window', sayRepair('not-inside', here)));
      for (const kind of kinds)
        faults.push(fault(kind, sayRepair('takes-time-of', { ...here, kind })));
      if (kinds.size === 0 && faults.length === 0)
        faults.push(fault('not-usable', sayRepair('time-not-usable', here)));
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
    const fault = {
      code: 'link',
      activity: activity.id,
      ...sayRepair('begins-too-soon', {
        activity: activity.id,
        from: link.from,
        other: link.activity,
        minutes: link.gapMinutes,
      }),
    };
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
            ...sayRepair('uses-more-than-there', {
              activity: item.activity,
              amount: used,
              resource: resource.id,
            }),
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
