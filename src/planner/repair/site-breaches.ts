// Work that what the site asks no longer allows where it was: closed time and curing.
import { addMinutes, localTimeOf, weekdayOf, type Instant } from '../../calendar/index.js';
import { weekdays, type Activity, type Curfew, type Plan, type Worded } from '../../model/index.js';
import { maturityRate } from '../../rules/conditions/index.js';
import type { Placement } from '../fit/types.js';
import { sayRepair } from './repair-sentences.js';

/** A constraint of the plan that a placement breaks. */
export interface Breach extends Worded {
  readonly code: string;
  readonly activity: string;
}

/** Work in time that the site closes to it, looked at beside the ledger: stretch by stretch and minute by minute. */
export function closedFaults(plan: Plan, activity: Activity, placement: Placement): Breach[] {
  const zone = plan.windows.find((window) => window.id === placement.window)?.zone ?? plan.zone;
  return (activity.heeds ?? []).flatMap((name): Breach[] => {
    const lists = (plan.rules.closed ?? []).filter((closed) => closed.name === name);
    const hit = lists.find((closed) => {
      if (closed.stretches.some((shut) => shut.start < placement.to && placement.from < shut.end))
        return true;
      if (closed.daily.length === 0) return false;
      for (let at = placement.from; at < placement.to; at = addMinutes(at, 1))
        if (closed.daily.some((band) => inCurfew(band, at, zone))) return true;
      return false;
    });
    if (!hit) return [];
    const said = sayRepair('in-closed-time', { activity: activity.id, rule: hit.rule });
    return [{ code: 'closed', activity: activity.id, ...said }];
  });
}

/** Concrete not cured when what waits for it begins: its maturity added up a minute at a time. */
export function curingFaults(
  plan: Plan,
  activity: Activity,
  first: Placement,
  placed: ReadonlyMap<string, readonly Placement[]>,
): Breach[] {
  return activity.after.flatMap((link): Breach[] => {
    const own = placed.get(link.activity) ?? [];
    if (!link.cured || own.length === 0) return [];
    const fault = (why: Worded): Breach[] => [
      {
        code: 'not-cured',
        activity: activity.id,
        ...sayRepair('not-cured', { activity: activity.id, pour: link.activity, why }),
      },
    ];
    if (!plan.curing) return fault(sayRepair('no-concrete', {}));
    const { settings, temperatures } = plan.curing;
    const until = addMinutes(first.from, -link.gapMinutes);
    let maturity = 0;
    let next = 0;
    for (
      let at = Math.max(...own.map((placement) => placement.to));
      at < until;
      at = addMinutes(at, 1)
    ) {
      while (next < temperatures.length && temperatures[next]!.end <= at) next += 1;
      const row = temperatures[next];
      const celsius = row && row.start <= at ? row.celsius : settings.otherwiseC;
      if (celsius === undefined) return fault(sayRepair('temperature-not-known', {}));
      maturity += maturityRate(settings.model, celsius) / 60;
      if (maturity >= settings.maturity) return [];
    }
    // Rows that change between whole minutes and sums of many steps leave a hair, never a minute at a time.
    return maturity >= settings.maturity * (1 - 1e-6)
      ? []
      : fault(sayRepair('maturity-reached', { reached: maturity, wanted: settings.maturity }));
  });
}

/** Whether the wall clock at a moment stands in a curfew, begun today or the day before. */
export function inCurfew(curfew: Curfew, at: Instant, zone: string): boolean {
  const { hour, minute } = localTimeOf(at, zone);
  const now = hour * 60 + minute;
  const from = clockMinutes(curfew.from);
  const to = clockMinutes(curfew.to);
  const today = weekdayOf(at, zone) - 1;
  const startsOn = (day: number): boolean =>
    !curfew.days || curfew.days.includes(weekdays[(day + 7) % 7]!);
  if (from < to) return now >= from && now < to && startsOn(today);
  // It runs over midnight: begun today, or yesterday.
  return (now >= from && startsOn(today)) || (now < to && startsOn(today - 1));
}

function clockMinutes(clock: string): number {
  return Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
}
