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

/** Time a rule asks for, before it is cut to what no other rule has taken. */
export interface Claim extends Interval {
  readonly rule: Worded;
  readonly kind: LedgerKind;
  readonly why: Worded;
}

interface Share {
  readonly claim: Claim;
  /** The claim cut to the stretch it may have. */
  readonly inside: Interval;
  /** What of that no earlier claim has; empty when nothing is left. */
  readonly pieces: IntervalSet;
}

/** Gives each minute of `within` to the first claim that asks for it. O(n log n) where few claims overlap. */
function share(claims: readonly Claim[], within: Interval): readonly Share[] {
  /** In time order; none overlaps another, some touch. */
  let taken: Interval[] = [];
  return claims.map((claim) => {
    const start = Math.min(Math.max(claim.start, within.start), within.end);
    const inside = { start, end: Math.max(start, Math.min(claim.end, within.end)) };
    if (inside.end === start) return { claim, inside, pieces: [] };
    const from = placeOf(taken, start);
    let to = from;
    while (to < taken.length && taken[to]!.start < inside.end) to += 1;
    const met = taken.slice(from, to);
    const pieces = subtract([inside], met);
    if (met.length === 0) taken.splice(from, 0, ...pieces);
    else {
      const both = [...met, ...pieces].sort((a, b) => a.start - b.start);
      taken = taken.slice(0, from).concat(both, taken.slice(to));
    }
    return { claim, inside, pieces };
  });
}

/** Index of the first interval that ends after a moment. */
function placeOf(intervals: readonly Interval[], moment: number): number {
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

/** What a step's row adds to its reason: what of it is shared with other steps, and what the window has no room for. */
function remarks({ claim, inside, pieces }: Share): readonly Worded[] {
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

const withRemarks = (item: Share): Worded => together([item.claim.why, ...remarks(item)]);

/**
 * Rows of steps: each minute of `within` goes to the first step that covers it.
 *
 * A step left with nothing keeps a row of 0 minutes that says why, placed where one row ends and the next begins so
 * that rows still follow one another without a gap.
 */
export function rowsOfSteps(claims: readonly Claim[], within: Interval): readonly LedgerRow[] {
  const rows: LedgerRow[] = [];
  const empty: Share[] = [];
  for (const item of share(claims, within)) {
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

/** Rows of stops: what of each lies in the time between lead-in and lead-out; a stop that lies outside has no row. */
export function rowsOfStops(claims: readonly Claim[], between: Interval): readonly LedgerRow[] {
  return share(claims, between).flatMap(({ claim, pieces }) =>
    pieces.map((piece) => rowOf(claim, piece)),
  );
}
