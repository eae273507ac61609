// Whether some activities fit one window, asked step by step of the clock: at each step every choice of what to begin
// is tried, and what has begun is followed to its end. It knows no search but this and remembers where it has been.
import { MINUTE } from '../../src/calendar/index.js';
import type { AccessWindow, Activity, Plan } from '../../src/model/index.js';
import { accepts, demand, isThere, left, minuteUsable, visit } from './plain-rules.js';

const never = -1_000_000;

/** For inside work alone. Every time and duration is a multiple of `step` minutes after the window's start. */
export function fitsOracle(
  plan: Plan,
  window: AccessWindow,
  activities: readonly Activity[],
  step: number,
): boolean {
  const work = activities.filter((activity) => left(activity) > 0);
  if (window.status === 'withdrawn' || !work.every((activity) => accepts(window, activity)))
    return false;
  const moments = Math.round((window.end - window.start) / MINUTE / step);
  const at = (moment: number): number => window.start + moment * step * MINUTE;
  const momentOf = (instant: number): number => (instant - window.start) / MINUTE / step;
  const usable = work.map((activity) =>
    Array.from({ length: moments }, (_, moment) =>
      minuteUsable(plan, window, activity, at(moment)),
    ),
  );
  const there = new Map(
    plan.resources.map((resource) => [
      resource.id,
      Array.from({ length: moments }, (_, moment) =>
        resource.availability
          .filter((row) => isThere(row, at(moment), plan.zone))
          .reduce((sum, row) => sum + row.capacity, 0),
      ),
    ]),
  );
  const longest = Math.max(
    0,
    ...work.flatMap((activity) => activity.after.map((link) => link.gapMinutes / step)),
  );
  const units = work.map(left);
  const begun = work.map(() => never);
  const ends = work.map(() => never);
  const dead = new Set<string>();

  const mayBegin = (i: number, moment: number): boolean => {
    const activity = work[i]!;
    if (activity.notBefore !== undefined && moment < momentOf(activity.notBefore)) return false;
    if (ends[i]! > moment) return false;
    return activity.after.every((link) => {
      const j = work.findIndex((other) => other.id === link.activity);
      if (j < 0) return true;
      const gap = link.gapMinutes / step;
      if (link.from === 'start') return begun[j]! > never && begun[j]! + gap <= moment;
      return units[j] === 0 && ends[j]! + gap <= moment;
    });
  };
  const hasRoom = (i: number, moment: number, end: number): boolean => {
    if (end > moments) return false;
    const activity = work[i]!;
    if (activity.keyDate !== undefined && end > momentOf(activity.keyDate)) return false;
    for (let now = moment; now < end; now += 1) {
      if (!usable[i]![now]) return false;
      for (const need of activity.resources) {
        let used = demand(activity, need.resource);
        work.forEach((other, j) => {
          if (ends[j]! > now) used += demand(other, need.resource);
        });
        if (used > (there.get(need.resource)?.[now] ?? Infinity)) return false;
      }
    }
    return true;
  };
  /** Whether what is left asks more of a resource than there is of it until the end. */
  const tooMuch = (moment: number): boolean =>
    [...there].some(([id, levels]) => {
      let spare = 0;
      for (let now = moment; now < moments; now += 1) spare += levels[now]!;
      work.forEach((activity, i) => {
        const amount = demand(activity, id);
        if (units[i]! > 0) spare -= (amount * visit(activity, units[i]!)) / step;
        spare -= amount * Math.max(0, ends[i]! - moment);
      });
      return spare < 0;
    });
  const from = (moment: number): boolean => {
    if (units.every((each) => each === 0)) return true;
    if (moment >= moments || tooMuch(moment)) return false;
    const key = [
      moment,
      ...units,
      ...ends.map((end) => Math.max(end - moment, -longest)),
      ...begun.map((start) => Math.max(start - moment, -longest - 1)),
    ].join();
    if (dead.has(key)) return false;
    const choose = (i: number): boolean => {
      if (i === work.length) return from(moment + 1);
      const [start, end] = [begun[i]!, ends[i]!];
      if (units[i]! > 0 && mayBegin(i, moment))
        for (let some = units[i]!; some >= 1; some -= 1) {
          const until = moment + visit(work[i]!, some) / step;
          if (!hasRoom(i, moment, until)) continue;
          units[i] = units[i]! - some;
          begun[i] = start > never ? start : moment;
          ends[i] = until;
          if (choose(i + 1)) return true;
          units[i] = units[i] + some;
          begun[i] = start;
          ends[i] = end;
        }
      return choose(i + 1);
    };
    if (choose(0)) return true;
    dead.add(key);
    return false;
  };
  return from(0);
}
