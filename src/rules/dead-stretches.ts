// A long window may have its sections dead in several stretches: each night of a blockade, say. Work that needs them is
// set up in one of them, gives them up before each ends, isolates and earths anew in the next, and leaves in the last.
import { MINUTE, type Instant, type Interval } from '../calendar/index.js';
import type { AccessWindow, Needs, PlanRules, Step } from '../model/index.js';
import type { Claim } from './claim.js';
import { isolationTimes, sectionsAt, type IsolationTimes } from './isolation.js';
import { sayOfLedger } from './ledger-sentences.js';
import { clockText, stepClaim } from './step-claim.js';
import { layOut, type PlacedStep } from './steps.js';

/**
 * The steps of a list that isolate, laid out from 0 where the others are not done again. Those keep their place in the
 * order and take no time: a step alongside one of them starts as soon as it does where the lead-in is done whole.
 */
function isolatingOf(steps: readonly Step[], needs: Needs): readonly PlacedStep[] {
  let again = isolatingAgain.get(steps);
  if (!again) {
    again = steps.map((step) => (isolates(step) ? step : { ...step, minutes: 0 }));
    isolatingAgain.set(steps, again);
  }
  return layOut(again, needs, 0).filter(({ step }) => isolates(step));
}

const isolates = ({ when }: Step): boolean => when === 'isolation';

const isolatingAgain = new WeakMap<readonly Step[], readonly Step[]>();

const endOf = (placed: readonly Interval[]): Instant =>
  Math.max(0, ...placed.map((interval) => interval.end));

/** The lead-in of work whose sections are dead from a moment on. */
export const leadInFrom = (
  window: Interval,
  needs: Needs,
  rules: PlanRules,
  deadFrom: Instant,
): readonly PlacedStep[] =>
  layOut(rules.leadIn, needs, window.start, (step) => (isolates(step) ? deadFrom : window.start));

/** When the lead-out starts so that it is over at the margin, and what isolates before the sections go live. */
export function leadOutStart(
  window: Interval,
  placed: readonly PlacedStep[],
  rules: PlanRules,
  deadUntil: Instant,
): Instant {
  const handback = window.end - rules.margin.minutes * MINUTE;
  // What must be over when the isolation ends: its own steps, or the work where it has none.
  const own = placed.filter(({ step }) => isolates(step));
  return Math.min(handback - endOf(placed), deadUntil - endOf(own));
}

/**
 * The stretches in which work can be done, in order, at least one: the first takes the lead-in, the last the lead-out,
 * and each between is long enough to isolate and give up again. Where none is, the one that comes nearest.
 */
export function stretchesUsed(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  { dead, timed }: IsolationTimes,
): readonly [Interval, ...Interval[]] {
  const [only, second] = dead;
  if (only && !second) return [only];
  if (!only) return [neverMeeting(window, timed)];
  const into = endOf(isolatingOf(rules.leadIn, needs));
  const out = endOf(isolatingOf(rules.leadOut, needs));
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

/** From when the last of the sections may be dead to when the first must be live: it ends before it starts. */
function neverMeeting(window: AccessWindow, timed: IsolationTimes['timed']): Interval {
  const start = Math.max(...timed.map(({ times }) => times[0]?.start ?? window.end));
  const end = Math.min(...timed.map(({ times }) => times.at(-1)?.end ?? window.start));
  return { start, end: Math.min(start, end) };
}

/** What lies between two stretches: the sections are given up, live, and isolated anew. */
export function turnClaims(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  used: readonly Interval[],
  { dead, timed }: IsolationTimes,
): readonly Claim[] {
  const into = isolatingOf(rules.leadIn, needs);
  const out = isolatingOf(rules.leadOut, needs);
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

/** Time in which sections are not dead yet, or not for long enough. */
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

/** From when on isolating steps, and work that needs them, can be in a window. */
export const isolationOpens = (window: AccessWindow, needs: Needs, rules: PlanRules): Instant =>
  stretchesUsed(window, needs, rules, isolationTimes(window, needs))[0].start;
