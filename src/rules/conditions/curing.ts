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
  /** First whole minute at which the required maturity is reached; absent when the record has a gap or ends before that. */
  readonly readyAt?: Instant;
  /** Maturity at `readyAt`, or at the end of known temperatures. */
  readonly reached: number;
  /** Maturity still missing at the end of known temperatures; 0 when ready. */
  readonly missing: number;
  /** Until when temperatures are known without a gap from the pour. */
  readonly knownUntil: Instant;
  readonly note: string;
}

const note =
  'By the temperatures given. A maturity needs the curve of the mix and does not replace a strength test.';

/** Maturity gained from `from` to `until`, in the unit of the model, and the intervals without a temperature. */
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
 * Earliest start of work that waits for concrete: when concrete poured at `pouredAt` has reached `needed` (in the unit
 * of the model).
 *
 * Nothing is guessed: known temperatures end at the first gap.
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
  // A sum of many steps may fall just short of its exact value by rounding.
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
 * The wait after pouring as the gap of a link between activities, in whole minutes; `undefined` when the temperatures
 * end too soon.
 */
export function curingMinutes(curing: Curing, pouredAt: Instant): number | undefined {
  if (curing.readyAt === undefined) return undefined;
  return totalMinutes(unionOf([{ start: pouredAt, end: curing.readyAt }]));
}
