import {
  HOUR,
  MINUTE,
  subtract,
  totalMinutes,
  unionOf,
  type Instant,
  type IntervalSet,
} from '../../calendar/index.js';
import type { Weather } from './forecast.js';
import type { MaturityModel } from '../../model/index.js';
import { maturityRate } from './maturity.js';

export interface Curing {
  /** The first whole minute at which the maturity asked for is reached; absent when the record ends or breaks off before. */
  readonly readyAt?: Instant;
  /** Maturity reached at `readyAt`, or by the end of what is known. */
  readonly reached: number;
  /** What is still missing at the end of what is known; 0 when ready. */
  readonly missing: number;
  /** How far the temperatures reach without a gap from the pour. */
  readonly knownUntil: Instant;
  readonly note: string;
}

const note =
  'By the temperatures given. A maturity needs the curve of the mix and does not replace a strength test.';

/** Maturity gained from `from` to `until`, in the unit of the model, and the stretches with no temperature. */
export function maturityBetween(
  weather: readonly Weather[],
  from: Instant,
  until: Instant,
  model: MaturityModel,
): { readonly maturity: number; readonly unknown: IntervalSet } {
  let maturity = 0;
  const known: { start: Instant; end: Instant }[] = [];
  for (const { start, end, row } of weather) {
    const stretch = { start: Math.max(start, from), end: Math.min(end, until) };
    if (row.temperatureC === undefined || stretch.end <= stretch.start) continue;
    known.push(stretch);
    maturity += (maturityRate(model, row.temperatureC) * (stretch.end - stretch.start)) / HOUR;
  }
  const unknown = subtract(unionOf([{ start: from, end: until }]), unionOf(known));
  return { maturity, unknown };
}

/**
 * The earliest moment at which the work that waits for concrete may start: when what was poured at `pouredAt` has
 * reached `needed` (in the unit of the model).
 *
 * Nothing is guessed: a gap in the temperatures ends what is known.
 * @throws {RangeError} When `needed` is below 0.
 */
export function earliestReady(
  weather: readonly Weather[],
  pouredAt: Instant,
  model: MaturityModel,
  needed: number,
): Curing {
  if (!(needed >= 0)) throw new RangeError(`maturity asked for is 0 or more, not ${needed}`);
  let reached = 0;
  let knownUntil = pouredAt;
  // A sum of many steps may end a hair short of the figure it is exactly.
  const enough = needed * (1 - 1e-12);
  if (needed === 0) return { readyAt: pouredAt, reached, missing: 0, knownUntil, note };
  for (const { start, end, row } of weather) {
    if (end <= knownUntil) continue;
    if (start > knownUntil || row.temperatureC === undefined) break;
    const rate = maturityRate(model, row.temperatureC);
    const gained = (rate * (end - knownUntil)) / HOUR;
    if (reached + gained >= enough) {
      const exact = ((enough - reached) / rate) * HOUR;
      const readyAt = Math.ceil((knownUntil + exact) / MINUTE - 1e-6) * MINUTE;
      reached += (rate * (readyAt - knownUntil)) / HOUR;
      return { readyAt, reached, missing: 0, knownUntil: Math.max(end, readyAt), note };
    }
    reached += gained;
    knownUntil = end;
  }
  return { reached, missing: needed - reached, knownUntil, note };
}

/**
 * The wait after pouring as a gap for a link between activities, in whole minutes; `undefined` when the temperatures
 * end too soon to say.
 */
export function curingMinutes(curing: Curing, pouredAt: Instant): number | undefined {
  if (curing.readyAt === undefined) return undefined;
  return totalMinutes(unionOf([{ start: pouredAt, end: curing.readyAt }]));
}
