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

/** A piece of a window that lies between one noon and the next: nights stay whole, long closures fold. */
export interface RibbonLine {
  /** Local noon the line counts from. */
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

/** A window cut at every local noon, in time order; each ledger row is cut with it. */
export function linesOf(window: AccessWindow, ledger: Ledger | undefined): RibbonLine[] {
  const lines: RibbonLine[] = [];
  let noon = noonBefore(window.start, window.zone);
  while (noon < window.end && lines.length < 400) {
    const next = noonBefore(noon + 36 * 60 * MINUTE, window.zone);
    const start = Math.max(noon, window.start);
    const end = Math.min(next, window.end);
    const rows = (ledger?.rows ?? [])
      .filter((row) => row.start < end && row.end > start)
      .map((row) => ({
        ...row,
        start: Math.max(row.start, start),
        end: Math.min(row.end, end),
      }));
    lines.push({
      noon,
      start,
      end,
      rows,
      changes: clockChanges(start, end, window.zone),
      first: start === window.start,
      last: end === window.end,
    });
    noon = next;
  }
  return lines;
}

/** The minutes after noon that any line uses, widened to whole hours; half-open. */
export function spanOf(lines: readonly RibbonLine[]): { from: number; to: number } {
  const from = Math.min(...lines.map((line) => (line.start - line.noon) / MINUTE));
  const to = Math.max(...lines.map((line) => (line.end - line.noon) / MINUTE));
  if (!(to > from)) return { from: 0, to: 1440 };
  return { from: Math.floor(from / 60) * 60, to: Math.ceil(to / 60) * 60 };
}
