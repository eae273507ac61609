import { HOUR, MINUTE, type Instant } from '../../calendar/index.js';
import type { CuringData } from '../../model/index.js';
import { maturityRate } from './maturity.js';

/** Converts pour time to cured time and back, in whole minutes. A later pour is never ready sooner. */
export interface MaturityCurve {
  /** Infinity when temperatures are missing. */
  readyAt(pouredAt: Instant): Instant;
  /** The latest pour that is ready by then; -Infinity when temperatures are missing. */
  latestPour(readyBy: Instant): Instant;
}

/** An interval with one rate, in maturity per millisecond; `NaN` when unknown. */
interface Piece {
  readonly start: Instant;
  readonly end: Instant;
  readonly rate: number;
}

/** The curve of the plan's concrete at its temperatures. O(intervals) to build, O(log + intervals walked) to query. */
export function maturityCurve({ settings, temperatures }: CuringData): MaturityCurve {
  const { model, otherwiseC } = settings;
  const needed = settings.maturity * (1 - 1e-12);
  const perMs = (celsius: number): number => maturityRate(model, celsius) / HOUR;
  const otherwise = otherwiseC === undefined ? Number.NaN : perMs(otherwiseC);
  const pieces: Piece[] = [];
  let at = Number.NEGATIVE_INFINITY;
  for (const { start, end, celsius } of temperatures) {
    if (start > at) pieces.push({ start: at, end: start, rate: otherwise });
    pieces.push({ start, end, rate: perMs(celsius) });
    at = end;
  }
  pieces.push({ start: at, end: Number.POSITIVE_INFINITY, rate: otherwise });
  const indexAt = (moment: Instant): number => {
    let low = 0;
    let high = pieces.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (pieces[middle]!.start <= moment) low = middle;
      else high = middle - 1;
    }
    return low;
  };

  const readyAt = (pouredAt: Instant): Instant => {
    let missing = needed;
    let from = pouredAt;
    for (let i = indexAt(pouredAt); i < pieces.length; i += 1) {
      const { end, rate } = pieces[i]!;
      if (Number.isNaN(rate)) break;
      if (rate > 0 && rate * (end - from) >= missing)
        return Math.ceil((from + missing / rate) / MINUTE - 1e-6) * MINUTE;
      missing -= rate === 0 ? 0 : rate * (end - from);
      from = end;
    }
    return Number.POSITIVE_INFINITY;
  };

  const latestPour = (readyBy: Instant): Instant => {
    let missing = needed;
    let to = readyBy;
    for (let i = indexAt(readyBy - 1); i >= 0; i -= 1) {
      const { start, rate } = pieces[i]!;
      if (Number.isNaN(rate)) break;
      if (rate > 0 && rate * (to - start) >= missing) {
        let pour = Math.floor((to - missing / rate) / MINUTE + 1e-6) * MINUTE;
        // Rounding up one way and down the other can be off by a minute.
        while (readyAt(pour) > readyBy) pour -= MINUTE;
        return pour;
      }
      missing -= rate === 0 ? 0 : rate * (to - start);
      to = start;
    }
    return Number.NEGATIVE_INFINITY;
  };
  return { readyAt, latestPour };
}
