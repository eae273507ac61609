import {
  lengthMinutes,
  subtract,
  totalMinutes,
  type Interval,
  type IntervalSet,
} from '../calendar/index.js';
import { because, together, type Worded } from '../model/index.js';
import { sayOfLedger } from './ledger-sentences.js';
import type { LedgerKind, LedgerRow } from './types.js';

/** Time that a rule asks for, before time taken by earlier rules is cut out. */
export interface Claim extends Interval {
  readonly rule: Worded;
  readonly kind: LedgerKind;
  readonly why: Worded;
}

interface AssignedClaim {
  readonly claim: Claim;
  /** The claim clipped to the allowed interval. */
  readonly inside: Interval;
  /** The parts of `inside` that no earlier claim took; may be empty. */
  readonly pieces: IntervalSet;
}

/** Gives each minute of `within` to the first claim that asks for it. O(n log n) where few claims overlap. */
function assignMinutes(claims: readonly Claim[], within: Interval): readonly AssignedClaim[] {
  /** Sorted and disjoint; neighbours may touch. */
  let taken: Interval[] = [];
  return claims.map((claim) => {
    const start = Math.min(Math.max(claim.start, within.start), within.end);
    const inside = { start, end: Math.max(start, Math.min(claim.end, within.end)) };
    if (inside.end === start) return { claim, inside, pieces: [] };
    const from = firstEndingAfter(taken, start);
    let to = from;
    while (to < taken.length && taken[to]!.start < inside.end) to += 1;
    const overlapping = taken.slice(from, to);
    const pieces = subtract([inside], overlapping);
    if (overlapping.length === 0) taken.splice(from, 0, ...pieces);
    else {
      const merged = [...overlapping, ...pieces].sort((a, b) => a.start - b.start);
      taken = taken.slice(0, from).concat(merged, taken.slice(to));
    }
    return { claim, inside, pieces };
  });
}

/** Index of the first interval that ends after a moment. */
function firstEndingAfter(intervals: readonly Interval[], moment: number): number {
  let low = 0;
  let high = intervals.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (intervals[middle]!.end <= moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

const rowOf = (claim: Claim, piece: Interval, why = claim.why): LedgerRow => ({
  start: piece.start,
  end: piece.end,
  rule: claim.rule.text,
  ...(claim.rule.sentence && { named: claim.rule.sentence }),
  kind: claim.kind,
  minutes: lengthMinutes(piece),
  ...because(why),
});

/** Additions to a step's reason: minutes shared with other steps, and minutes that the window has no room for. */
function remarks({ claim, inside, pieces }: AssignedClaim): readonly Worded[] {
  const needed = lengthMinutes(claim);
  const has = lengthMinutes(inside);
  const shared = has - totalMinutes(pieces);
  if (needed > 0 && shared === 0 && has === needed) return [];
  const said: Worded[] = [];
  if (needed === 0) said.push(sayOfLedger('step-takes-no-time', {}));
  else if (shared > 0 && pieces.length === 0) said.push(sayOfLedger('step-all-beside', {}));
  else if (shared > 0) said.push(sayOfLedger('step-part-beside', { minutes: shared }));
  if (has < needed) said.push(sayOfLedger('window-short-of-step', { needed, has }));
  return said;
}

const withRemarks = (item: AssignedClaim): Worded => together([item.claim.why, ...remarks(item)]);

/**
 * Rows of steps: each minute of `within` goes to the first step that covers it.
 *
 * A step left with no minutes keeps a row of 0 minutes that says why. It is placed between two rows, so that rows still
 * follow one another without a gap.
 */
export function rowsOfSteps(claims: readonly Claim[], within: Interval): readonly LedgerRow[] {
  const rows: LedgerRow[] = [];
  const empty: AssignedClaim[] = [];
  for (const item of assignMinutes(claims, within)) {
    const { claim, pieces } = item;
    const why = withRemarks(item);
    for (const piece of pieces) rows.push(rowOf(claim, piece, why));
    if (pieces.length === 0) empty.push(item);
  }
  for (const item of empty) {
    const { start } = item.inside;
    const over = rows.find((row) => row.start < start && start < row.end);
    const at = over ? over.end : start;
    rows.push(rowOf(item.claim, { start: at, end: at }, withRemarks(item)));
  }
  return rows;
}

/** Rows of stops, each clipped to the time between lead-in and lead-out. A stop outside it has no row. */
export function rowsOfStops(claims: readonly Claim[], between: Interval): readonly LedgerRow[] {
  return assignMinutes(claims, between).flatMap(({ claim, pieces }) =>
    pieces.map((piece) => rowOf(claim, piece)),
  );
}
