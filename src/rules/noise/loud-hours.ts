import type { Curfew, NoiseLimits } from '../../model/index.js';
import { predict, screeningOnly, type NoiseSource, type Prediction } from './prediction.js';

/** One period of the day against its limit. */
export interface PeriodVerdict {
  readonly period: string;
  readonly limitDb: number;
  readonly levelDb: number;
  /** dB above the limit; 0 or below: within it. */
  readonly overDb: number;
  readonly prediction: Prediction;
}

export interface NoiseVerdict {
  readonly activity: string;
  readonly periods: readonly PeriodVerdict[];
  /** The hours in which the activity would exceed a limit: times of day in which it may not be loud. */
  readonly curfews: readonly Curfew[];
  readonly note: string;
}

// Rounding tolerance in dB, far below what a meter reads.
const toleranceDb = 1e-9;

/**
 * The level of an activity with all its machines against the limit at one dwelling, in each period of the day, and
 * curfews for the periods in which it is too loud. To assess activities that work at once, pass their sources together.
 *
 * `ambientDb`: the level without the work, by period, for limits that depend on it.
 */
export function loudHours(
  activity: string,
  sources: readonly NoiseSource[],
  limits: NoiseLimits,
  ambientDb: Readonly<Record<string, number>> = {},
): NoiseVerdict {
  const periods = limits.periods.map(({ period, orAmbient, ...limit }): PeriodVerdict => {
    const prediction = predict(sources, { facade: limits.facade, period });
    const levelDb = prediction.totalDb;
    const ambient = orAmbient ? (ambientDb[period] ?? 0) : 0;
    const limitDb = Math.max(limit.limitDb, ambient);
    return { period, limitDb, levelDb, overDb: levelDb - limitDb, prediction };
  });
  const curfews = limits.periods.flatMap(({ period, bands, source }, i): Curfew[] =>
    periods[i]!.overDb > toleranceDb
      ? bands.map((band) => ({
          name: `${activity}: too loud, ${period.toLowerCase()}`,
          bars: 'loud',
          from: band.from,
          to: band.to,
          ...(band.days && { days: band.days }),
          source: `${source}. ${screeningOnly}`,
        }))
      : [],
  );
  return { activity, periods, curfews, note: screeningOnly };
}
