// The plan's rules asked of one minute, one window or one visit at a time, for the plain searches of tests.
import { localTimeOf, MINUTE, weekdayOf } from '../../src/calendar/index.js';
import {
  weekdays,
  type AccessWindow,
  type Activity,
  type Availability,
  type Plan,
} from '../../src/model/index.js';

/** Units, or 1 of a whole piece, that are still to be done. */
export function left({ work }: Activity): number {
  return work.kind === 'whole' ? 1 : work.units - work.done;
}

/** Minutes of a visit with so many units. */
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

export function accepts(window: AccessWindow, activity: Activity): boolean {
  const { extent } = activity;
  return (
    (activity.window === undefined || activity.window === window.id) &&
    (window.lines.length === 0 || activity.lines.every((line) => window.lines.includes(line))) &&
    (!extent ||
      !window.extent ||
      (window.extent.from <= extent.from && extent.to <= window.extent.to)) &&
    activity.isolation.every((section) => window.isolation.some((item) => item.section === section))
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

export function outsideBarred(plan: Plan, activity: Activity, at: number): boolean {
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
