// A long window may have its sections isolated (dead) in several intervals, such as each night of a blockade. Work that
// needs them sets up in one interval, gives up the isolation before it ends, isolates and earths again in the next, and
// clears in the last.
import { MINUTE, type Instant, type Interval } from '../calendar/index.js';
import type { AccessWindow, Needs, PlanRules, Step } from '../model/index.js';
import type { Claim } from './claim.js';
import { isolationTimes, sectionsAt, type IsolationTimes } from './isolation.js';
import { sayOfLedger } from './ledger-sentences.js';
import { clockText, stepClaim } from './step-claim.js';
import { layOut, type PlacedStep } from './steps.js';

/**
 * The isolating steps of a list, laid out from 0, for when the other steps are not repeated. The others keep their
 * place in the order with 0 minutes, so a step alongside one of them starts as early as it does in a full lead-in.
 */
function isolatingSteps(steps: readonly Step[], needs: Needs): readonly PlacedStep[] {
  let again = repeatedSteps.get(steps);
  if (!again) {
    again = steps.map((step) => (isolates(step) ? step : { ...step, minutes: 0 }));
    repeatedSteps.set(steps, again);
  }
  return layOut(again, needs, 0).filter(({ step }) => isolates(step));
}

const isolates = ({ when }: Step): boolean => when === 'isolation';

const repeatedSteps = new WeakMap<readonly Step[], readonly Step[]>();

const endOf = (placed: readonly Interval[]): Instant =>
  Math.max(0, ...placed.map((interval) => interval.end));

/** The lead-in of work whose sections are dead from `deadFrom` on. */
export const leadInFrom = (
  window: Interval,
  needs: Needs,
  rules: PlanRules,
  deadFrom: Instant,
): readonly PlacedStep[] =>
  layOut(rules.leadIn, needs, window.start, (step) => (isolates(step) ? deadFrom : window.start));

/** Latest start of the lead-out: it must end before the margin, and its isolating steps before the sections go live. */
export function leadOutStart(
  window: Interval,
  placed: readonly PlacedStep[],
  rules: PlanRules,
  deadUntil: Instant,
): Instant {
  const handback = window.end - rules.margin.minutes * MINUTE;
  // Only isolating steps must end with the isolation; with none of them, the work must.
  const own = placed.filter(({ step }) => isolates(step));
  return Math.min(handback - endOf(placed), deadUntil - endOf(own));
}

/**
 * The dead intervals in which work can be done, in order, at least one: the first has room for the lead-in, the last
 * for the lead-out, and each between for isolating and giving up again. If none has room, the nearest to it.
 */
export function stretchesUsed(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  { dead, timed }: IsolationTimes,
): readonly [Interval, ...Interval[]] {
  const [only, second] = dead;
  if (only && !second) return [only];
  if (!only) return [noCommonTime(window, timed)];
  const into = endOf(isolatingSteps(rules.leadIn, needs));
  const out = endOf(isolatingSteps(rules.leadOut, needs));
  const placed = layOut(rules.leadOut, needs, 0);
  const enters = dead.findIndex(({ start, end }) => {
    const steps = leadInFrom(window, needs, rules, start);
    return Math.max(start, ...steps.map((step) => step.end)) + out < end;
  });
  const leaves = dead.findLastIndex(
    ({ start, end }) => leadOutStart(window, placed, rules, end) > start + into,
  );
  if (enters < 0 || enters >= leaves) return [dead[enters] ?? dead[leaves] ?? longestOf(dead)];
  const between = dead
    .slice(enters + 1, leaves)
    .filter(({ start, end }) => end - start > into + out);
  return [dead[enters]!, ...between, dead[leaves]!];
}

const longestOf = (dead: readonly Interval[]): Interval =>
  dead.reduce((best, interval) =>
    interval.end - interval.start > best.end - best.start ? interval : best,
  );

/** For sections that are never dead together: an empty interval from when the last section may be dead. */
function noCommonTime(window: AccessWindow, timed: IsolationTimes['timed']): Interval {
  const start = Math.max(...timed.map(({ times }) => times[0]?.start ?? window.end));
  const end = Math.min(...timed.map(({ times }) => times.at(-1)?.end ?? window.start));
  return { start, end: Math.min(start, end) };
}

/** Claims between two dead intervals: the isolation is given up, the sections are live, and they are isolated again. */
export function reisolationClaims(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  used: readonly Interval[],
  { dead, timed }: IsolationTimes,
): readonly Claim[] {
  const into = isolatingSteps(rules.leadIn, needs);
  const out = isolatingSteps(rules.leadOut, needs);
  return used.slice(1).flatMap((next, k): Claim[] => {
    const before = used[k]!;
    const ends = sectionsAt(timed, 'end', before.end);
    const starts = sectionsAt(timed, 'start', next.start);
    const moved = (placed: readonly PlacedStep[], kind: 'lead-in' | 'lead-out', at: Instant) => {
      const again = new Set(placed.map(({ step }) => step.step));
      return placed.map((step) =>
        stepClaim(
          { ...step, start: step.start + at, end: step.end + at },
          kind,
          window,
          {
            'lead-in': sayOfLedger('counted-again', {
              sections: starts,
              at: clockText(next.start, window),
            }),
            'lead-out': sayOfLedger('counted-from-given-up', {
              sections: ends,
              at: clockText(before.end, window),
            }),
          },
          (name) => again.has(name),
        ),
      );
    };
    return [
      ...moved(out, 'lead-out', before.end - endOf(out)),
      waitClaim(window, { start: before.end, end: next.start }, starts, dead),
      ...moved(into, 'lead-in', next.start),
    ];
  });
}

/** A claim for time in which sections are not dead yet, or not for long enough. */
export function waitClaim(
  window: AccessWindow,
  time: Interval,
  sections: string,
  dead: readonly Interval[],
): Claim {
  const given = { sections, at: clockText(time.end, window) };
  const tooShort = dead.some((interval) => interval.start < time.end && time.start < interval.end);
  return {
    ...time,
    rule: sayOfLedger('wait-for-isolation', given),
    kind: 'lead-in',
    why: sayOfLedger(tooShort ? 'dead-too-short' : 'isolated-from', given),
  };
}

/** Earliest time in a window for isolating steps and the work that needs them. */
export const isolationOpens = (window: AccessWindow, needs: Needs, rules: PlanRules): Instant =>
  stretchesUsed(window, needs, rules, isolationTimes(window, needs))[0].start;
