import {
  clockChanges,
  instantOf,
  localTimeOf,
  MINUTE,
  startOfLocalDay,
  type Instant,
} from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger, LedgerRow } from '../../src/rules/types.js';

/** The part of a window between one noon and the next, so that nights stay whole and long closures wrap. */
export interface RibbonLine {
  /** Local noon at the start of the line. */
  readonly noon: Instant;
  readonly start: Instant;
  readonly end: Instant;
  readonly rows: readonly LedgerRow[];
  /** Clock changes inside the piece. */
  readonly changes: readonly { readonly at: Instant; readonly forwardMinutes: number }[];
  readonly first: boolean;
  readonly last: boolean;
}

/** The local noon at or before a moment. */
export function noonBefore(at: Instant, zone: string): Instant {
  const back = localTimeOf(at, zone).hour < 12 ? -1 : 0;
  const day = localTimeOf(startOfLocalDay(at, zone, back) + 60 * MINUTE, zone);
  return instantOf({ ...day, hour: 12, minute: 0 }, zone, 'earlier');
}

/** Cache: unchanged windows stay the same objects from one edit to the next. */
const known = new WeakMap<AccessWindow, readonly RibbonLine[]>();

/** Cuts a window at every local noon, in time order, without ledger rows. */
export function piecesOf(window: AccessWindow): readonly RibbonLine[] {
  let pieces = known.get(window);
  if (!pieces) known.set(window, (pieces = cutAtNoons(window)));
  return pieces;
}

function cutAtNoons(window: AccessWindow): RibbonLine[] {
  const lines: RibbonLine[] = [];
  let noon = noonBefore(window.start, window.zone);
  while (noon < window.end && lines.length < 400) {
    const next = noonBefore(noon + 36 * 60 * MINUTE, window.zone);
    const start = Math.max(noon, window.start);
    const end = Math.min(next, window.end);
    lines.push({
      noon,
      start,
      end,
      rows: [],
      changes: clockChanges(start, end, window.zone),
      first: start === window.start,
      last: end === window.end,
    });
    noon = next;
  }
  return lines;
}

/** Cuts a window and its ledger rows at every local noon, in time order. */
export function linesOf(window: AccessWindow, ledger: Ledger | undefined): RibbonLine[] {
  return piecesOf(window).map((piece) => ({
    ...piece,
    rows: (ledger?.rows ?? [])
      .filter((row) => row.start < piece.end && row.end > piece.start)
      .map((row) => ({
        ...row,
        start: Math.max(row.start, piece.start),
        end: Math.min(row.end, piece.end),
      })),
  }));
}

/** The range of minutes after noon used by any line, widened to whole hours; half-open. */
export function spanOf(lines: Iterable<RibbonLine>): { from: number; to: number } {
  let from = Infinity;
  let to = -Infinity;
  for (const line of lines) {
    from = Math.min(from, (line.start - line.noon) / MINUTE);
    to = Math.max(to, (line.end - line.noon) / MINUTE);
  }
  if (!(to > from)) return { from: 0, to: 1440 };
  return { from: Math.floor(from / 60) * 60, to: Math.ceil(to / 60) * 60 };
}
