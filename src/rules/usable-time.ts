// What a ledger leaves usable, without its rows: many times quicker, for whoever tries many lengths of a window.
import { MINUTE, subtract, unionOf, type Interval, type IntervalSet } from '../calendar/index.js';
import type { AccessWindow, Needs, PlanRules } from '../model/index.js';
import { barsWork, closedStretches, curfewStretches } from './curfews.js';
import { leadInFrom, leadOutStart, stretchesUsed, turnClaims } from './dead-stretches.js';
import { isolationTimes, type IsolationTimes } from './isolation.js';
import { shiftBreaks } from './shift-breaks.js';
import { layOut } from './steps.js';

/** Where the lead-in of a window ends, where its lead-out or margin begins, and what is between. */
export interface Middle {
  /** Later than `outStart` where the window is too short for its deductions. */
  readonly inEnd: number;
  readonly outStart: number;
  /** Margin and lead-out keep their minutes first; empty where nothing is left. */
  readonly between: Interval;
}

/** O(steps). */
export function middleOf(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  used: readonly Interval[],
): Middle {
  const deadFrom = used[0]!.start;
  let inEnd = Math.max(window.start, deadFrom);
  for (const step of leadInFrom(window, needs, rules, deadFrom)) inEnd = Math.max(inEnd, step.end);
  const steps = layOut(rules.leadOut, needs, 0);
  const outStart = Math.min(
    window.end - rules.margin.minutes * MINUTE,
    leadOutStart(window, steps, rules, used.at(-1)!.end),
  );
  const end = Math.max(window.start, outStart);
  return { inEnd, outStart, between: { start: Math.min(inEnd, end), end } };
}

/** Minutes before the end of a window by which work must be clear, where no isolation ends sooner. */
export function minutesAfterWork(needs: Needs, rules: PlanRules): number {
  const ends = layOut(rules.leadOut, needs, 0).map((step) => step.end);
  return rules.margin.minutes + Math.max(0, ...ends) / MINUTE;
}

/**
 * The usable time of a window for work with the given needs: that of its ledger.
 *
 * @param curfews Stretches that bar the work, where they are known already.
 */
export function usableTime(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  curfews: readonly Interval[] = rules.curfews.flatMap((curfew) =>
    barsWork(curfew, needs.loud) ? curfewStretches(curfew, window, window.zone) : [],
  ),
): IntervalSet {
  const isolation = isolationTimes(window, needs);
  if (isolation.notBooked.length > 0) return [];
  const used = stretchesUsed(window, needs, rules, isolation);
  const { between } = middleOf(window, needs, rules, used);
  if (between.end <= between.start) return [];
  const stops = [...curfews, ...stopsOf(window, needs, rules, { used, isolation })];
  return stops.length === 0 ? [between] : subtract([between], unionOf(stops));
}

interface Dead {
  readonly used: readonly Interval[];
  readonly isolation: IsolationTimes;
}

/** Beside curfews. */
function stopsOf(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  { used, isolation }: Dead,
): Interval[] {
  const stops: Interval[] = [];
  if (used.length > 1) stops.push(...turnClaims(window, needs, rules, used, isolation));
  const { heeds = [] } = needs;
  for (const closedTime of rules.closed ?? [])
    if (heeds.includes(closedTime.name))
      stops.push(...closedStretches(closedTime, window, window.zone));
  stops.push(...shiftBreaks(window, rules.shifts));
  return stops;
}
