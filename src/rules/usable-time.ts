// The usable time of a ledger without its rows: many times faster, for trying many lengths of a window.
import { MINUTE, subtract, unionOf, type Interval, type IntervalSet } from '../calendar/index.js';
import type { AccessWindow, Needs, PlanRules } from '../model/index.js';
import { barsWork, closedStretches, curfewStretches } from './curfews.js';
import { leadInFrom, leadOutStart, stretchesUsed, reisolationClaims } from './dead-stretches.js';
import { isolationTimes, type IsolationTimes } from './isolation.js';
import { shiftBreaks } from './shift-breaks.js';
import { layOut } from './steps.js';

/** The end of a window's lead-in, the start of its lead-out or margin, and the time between. */
export interface WorkSpan {
  /** Later than `clearBy` where the window is too short for its deductions. */
  readonly leadInEnd: number;
  readonly clearBy: number;
  /** Margin and lead-out take their minutes first; empty when nothing is left. */
  readonly between: Interval;
}

/** O(steps). */
export function workSpanOf(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  used: readonly Interval[],
): WorkSpan {
  const deadFrom = used[0]!.start;
  let leadInEnd = Math.max(window.start, deadFrom);
  for (const step of leadInFrom(window, needs, rules, deadFrom))
    leadInEnd = Math.max(leadInEnd, step.end);
  const steps = layOut(rules.leadOut, needs, 0);
  const clearBy = Math.min(
    window.end - rules.margin.minutes * MINUTE,
    leadOutStart(window, steps, rules, used.at(-1)!.end),
  );
  const end = Math.max(window.start, clearBy);
  return { leadInEnd, clearBy, between: { start: Math.min(leadInEnd, end), end } };
}

/** Minutes before the end of a window by which work must be clear, unless an isolation ends sooner. */
export function minutesAfterWork(needs: Needs, rules: PlanRules): number {
  const ends = layOut(rules.leadOut, needs, 0).map((step) => step.end);
  return rules.margin.minutes + Math.max(0, ...ends) / MINUTE;
}

/**
 * Usable time of a window for work with the given needs; equal to `usable` of its ledger.
 *
 * @param curfews Curfew intervals that bar the work, if already known.
 */
export function usableTime(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  curfews: readonly Interval[] = curfewsOf(window, needs, rules, window),
): IntervalSet {
  const isolation = isolationTimes(window, needs);
  if (isolation.notBooked.length > 0) return [];
  const used = stretchesUsed(window, needs, rules, isolation);
  const { between } = workSpanOf(window, needs, rules, used);
  if (between.end <= between.start) return [];
  const stops = [...curfews, ...stopsOf(window, needs, rules, { used, isolation }, window)];
  return stops.length === 0 ? [between] : subtract([between], unionOf(stops));
}

/** Minutes after the booked end in which it is still known when work must stop. */
const OVERRUN_MINUTES = 24 * 60;

/**
 * When work with the given needs must stop, up to a day after the booked end: what runs late heeds curfews, too, where
 * the ledger holds lead-out and margin.
 */
export function stopsOfWork(window: AccessWindow, needs: Needs, rules: PlanRules): IntervalSet {
  const isolation = isolationTimes(window, needs);
  const used = stretchesUsed(window, needs, rules, isolation);
  const range = { start: window.start, end: window.end + OVERRUN_MINUTES * MINUTE };
  return unionOf([
    ...curfewsOf(window, needs, rules, range),
    ...stopsOf(window, needs, rules, { used, isolation }, range),
  ]);
}

function curfewsOf(
  { zone }: AccessWindow,
  { loud }: Needs,
  { curfews }: PlanRules,
  range: Interval,
): readonly Interval[] {
  return curfews.flatMap((curfew) =>
    barsWork(curfew, loud) ? curfewStretches(curfew, range, zone) : [],
  );
}

interface Dead {
  readonly used: readonly Interval[];
  readonly isolation: IsolationTimes;
}

/** Intervals that stop work, other than curfews. Of closed time, those of `range`. */
function stopsOf(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  { used, isolation }: Dead,
  range: Interval,
): Interval[] {
  const stops: Interval[] = [];
  if (used.length > 1) stops.push(...reisolationClaims(window, needs, rules, used, isolation));
  const { heeds = [] } = needs;
  for (const closedTime of rules.closed ?? [])
    if (heeds.includes(closedTime.name))
      stops.push(...closedStretches(closedTime, range, window.zone));
  stops.push(...shiftBreaks(window, rules.shifts));
  return stops;
}
