import type { Curfew, NoiseLimits } from '../../model/index.js';
import { predict, screeningOnly, type NoiseSource, type Prediction } from './prediction.js';

/** One period of the day against its limit. */
export interface PeriodVerdict {
  readonly period: string;
  readonly limitDb: number;
  readonly levelDb: number;
  /** Above 0: over the limit by so much. 0 or below: within it. */
  readonly overDb: number;
  readonly prediction: Prediction;
}

export interface NoiseVerdict {
  readonly activity: string;
  readonly periods: readonly PeriodVerdict[];
  /** The hours in which the activity would be over: bands in which it may not be loud. */
  readonly curfews: readonly Curfew[];
  readonly note: string;
}

// Two ways to the same level differ in the last digits of a double; no meter reads them.
const whisker = 1e-9;

/**
 * Each period of the day in which an activity, with all the machines it works, is over the limit at one dwelling,
 * and the curfews that follow. To judge activities that work at once, give their sources together.
 *
 * `ambientDb`: the level without the work, by period, for limits that give way to it.
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
    periods[i]!.overDb > whisker
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
