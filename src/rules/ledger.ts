import {
  lengthMinutes,
  MINUTE,
  subtract,
  totalMinutes,
  unionOf,
  type Instant,
  type Interval,
} from '../calendar/index.js';
import { together, type AccessWindow, type Needs, type PlanRules } from '../model/index.js';
import { rowsOfSteps, rowsOfStops, type Claim } from './claim.js';
import { closedClaims, curfewClaims } from './curfews.js';
import {
  leadInFrom,
  leadOutStart,
  stretchesUsed,
  reisolationClaims,
  waitClaim,
} from './dead-stretches.js';
import { isolationTimes, sectionsAt, type IsolationTimes } from './isolation.js';
import { sayOfLedger, sourceOf } from './ledger-sentences.js';
import { shiftBreaks } from './shift-breaks.js';
import { clockText, stepClaim } from './step-claim.js';
import { layOut } from './steps.js';
import type { Ledger, LedgerRow } from './types.js';
import { workSpanOf } from './usable-time.js';

/** Lead-in, forward from the start. Steps that isolate, and work that needs them, wait until the sections may be dead. */
function leadIn(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  deadFrom: Instant,
  { dead, timed }: IsolationTimes,
): readonly Claim[] {
  const claims = leadInFrom(window, needs, rules, deadFrom).map((step) =>
    stepClaim(step, 'lead-in', window),
  );
  const end = Math.max(deadFrom, ...claims.map((claim) => claim.end));
  const waits = subtract(unionOf([{ start: window.start, end }]), unionOf(claims));
  if (waits.length === 0) return claims;
  const sections = sectionsAt(timed, 'start', deadFrom);
  return [
    ...claims,
    ...waits.map((gap) => ({
      ...waitClaim(window, { start: gap.start, end: deadFrom }, sections, dead),
      end: gap.end,
    })),
  ];
}

/** Lead-out, back from the margin, or from an isolation that must be given up before that. */
function leadOut(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  deadUntil: Instant,
  { timed }: IsolationTimes,
): readonly Claim[] {
  const handback = window.end - rules.margin.minutes * MINUTE;
  const placed = layOut(rules.leadOut, needs, 0);
  const start = leadOutStart(window, placed, rules, deadUntil);
  const claims = placed.map((step) =>
    stepClaim({ ...step, start: start + step.start, end: start + step.end }, 'lead-out', window),
  );
  const end = Math.max(start, ...claims.map((claim) => claim.end));
  if (end >= handback || deadUntil >= window.end) return claims;
  const sections = sectionsAt(timed, 'end', deadUntil);
  return [
    ...claims,
    {
      start: end,
      end: handback,
      rule: sayOfLedger('given-up', { sections }),
      kind: 'lead-out',
      why: sayOfLedger('over-before-given-up', { sections, at: clockText(deadUntil, window) }),
    },
  ];
}

function margin(window: AccessWindow, rules: PlanRules): readonly Claim[] {
  const { minutes, source } = rules.margin;
  if (minutes === 0) return [];
  return [
    {
      start: window.end - minutes * MINUTE,
      end: window.end,
      rule: sayOfLedger('margin', {}),
      kind: 'margin',
      why: together([sayOfLedger('margin-kept', { minutes }), ...sourceOf(source)]),
    },
  ];
}

function barredOf(window: AccessWindow, notBooked: readonly string[]): Ledger['barred'] {
  return [
    ...(window.status === 'withdrawn'
      ? [{ code: 'withdrawn', ...sayOfLedger('window-withdrawn', {}) }]
      : []),
    ...notBooked.map((section) => ({
      code: 'isolation-not-booked',
      ...sayOfLedger('window-does-not-isolate', { section }),
    })),
  ];
}

/** The time between lead-in and lead-out: usable, less what stops it. */
function work(
  window: AccessWindow,
  needs: Needs,
  rules: PlanRules,
  between: Interval,
  notBooked: readonly string[],
  turns: readonly Claim[],
): readonly LedgerRow[] {
  if (between.end <= between.start) return [];
  if (notBooked.length > 0)
    return rowsOfStops(
      [
        {
          ...between,
          rule: sayOfLedger('not-booked', {}),
          kind: 'lead-in',
          why: sayOfLedger('cannot-begin', { sections: notBooked }),
        },
      ],
      between,
    );
  const usable: Claim = {
    ...between,
    rule: sayOfLedger('usable', {}),
    kind: 'usable',
    why: sayOfLedger('left-for-work', {}),
  };
  const stops = [
    ...turns,
    ...curfewClaims(window, needs, rules.curfews),
    ...closedClaims(window, needs, rules.closed),
    ...shiftBreaks(window, rules.shifts),
  ];
  return rowsOfStops([...stops, usable], between);
}

/**
 * Partitions a window's minutes for work with the given needs.
 *
 * Lead-in runs forward from the start, lead-out back from the required margin, which is the last row. Curfews, shift
 * changeovers and the time between two dead intervals are cut out of what is between. Rows are half-open, in time
 * order, follow one another without a gap and sum to the gross to the minute; a step that runs wholly beside others
 * keeps a row of 0 minutes. If a window is too short for its deductions, they are cut (the margin last), nothing is
 * usable, and `shortfallMinutes` says by how much.
 *
 * A withdrawn window still shows its minutes; `barred` says that it takes no work.
 */
export function ledgerOf(window: AccessWindow, needs: Needs, rules: PlanRules): Ledger {
  const isolation = isolationTimes(window, needs);
  const { notBooked } = isolation;
  const used = stretchesUsed(window, needs, rules, isolation);
  const before = leadIn(window, needs, rules, used[0].start, isolation);
  const after = leadOut(window, needs, rules, used.at(-1)!.end, isolation);
  // In a window that is too short, the margin keeps its minutes first, then the lead-out; the lead-in gets the rest.
  const { leadInEnd, clearBy, between } = workSpanOf(window, needs, rules, used);
  const rows = [
    ...rowsOfSteps(before, { start: window.start, end: between.start }),
    ...work(
      window,
      needs,
      rules,
      between,
      notBooked,
      reisolationClaims(window, needs, rules, used, isolation),
    ),
    ...rowsOfSteps(after, { start: between.end, end: window.end }),
    ...rowsOfSteps(margin(window, rules), window),
  ].sort((a, b) => a.start - b.start || a.end - b.end);
  const usable = unionOf(rows.filter((row) => row.kind === 'usable'));
  return {
    window: window.id,
    needs,
    grossMinutes: lengthMinutes(window),
    usableMinutes: totalMinutes(usable),
    rows,
    usable,
    shortfallMinutes: Math.max(0, Math.round((leadInEnd - clearBy) / MINUTE)),
    barred: barredOf(window, notBooked),
  };
}
