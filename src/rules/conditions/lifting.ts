import {
  intersect,
  MINUTE,
  subtract,
  totalMinutes,
  unionOf,
  type Interval,
  type IntervalSet,
} from '../../calendar/index.js';
import type { WeatherRow } from '../../model/index.js';
import type { Weather } from './forecast.js';
import { gustAtHeight, reducedLimit, type Load } from './wind.js';

/** The limits of a lift in the weather. */
export interface Lift {
  /** Highest permissible gust by the chart in use, at the height of the boom tip, m/s. */
  readonly chartLimitMps: number;
  /** Height of the boom tip or of the load, whichever is higher, in metres above ground. */
  readonly heightMetres: number;
  /** If given, the limit is reduced for the load's wind area. */
  readonly load?: Load;
  /** Minutes to wait after a gust above the limit before lifting resumes; 0 when absent. */
  readonly settleMinutes?: number;
  /** Minutes to wait after the last lightning; 30 when absent. @see US Army EM 385-1-1, quoted in a course, read. */
  readonly lightningMinutes?: number;
  /** Temperature in °C below which the crane may not work, where its manual gives one. */
  readonly coldestC?: number;
}

export interface LiftingHours {
  readonly limitMps: number;
  /** Time in the window that the forecast closes to lifting, waits included. */
  readonly closed: IntervalSet;
  /** Time without a forecast: neither open nor closed. */
  readonly unknown: IntervalSet;
  readonly lostMinutes: number;
  readonly openMinutes: number;
  /** Highest gust at height in the window, m/s; absent without a forecast. */
  readonly highestGustMps?: number;
  readonly note: string;
}

const note =
  'From a forecast at 10 m, not the wind at the hook. Lifts need a plan by an appointed person, and the crane’s own manual governs.';

/**
 * The gust at a height, from a forecast row: the worse of the mean wind scaled to that height and the gust at 10 m
 * scaled in the same proportion. `undefined` when the row has neither.
 */
export function gustOf(row: WeatherRow, metres: number): number | undefined {
  const fromMean = row.windMps === undefined ? -1 : gustAtHeight(row.windMps, metres);
  const fromGust =
    row.gustMps === undefined ? -1 : (row.gustMps * gustAtHeight(1, metres)) / gustAtHeight(1, 10);
  const worse = Math.max(fromMean, fromGust);
  return worse < 0 ? undefined : worse;
}

/** The hours of a window that a forecast closes to a lift. Lifting stops above the limit, not at it. */
export function liftingHours(
  weather: readonly Weather[],
  lift: Lift,
  window: Interval,
): LiftingHours {
  const limitMps = lift.load ? reducedLimit(lift.chartLimitMps, lift.load) : lift.chartLimitMps;
  const closed: Interval[] = [];
  const known: Interval[] = [];
  let highest = -1;
  const close = (interval: Interval, waitMinutes: number): void => {
    closed.push({ start: interval.start, end: interval.end + waitMinutes * MINUTE });
  };
  for (const item of weather) {
    const gust = gustOf(item.row, lift.heightMetres);
    if (gust !== undefined) {
      known.push(item);
      if (item.start < window.end && item.end > window.start) highest = Math.max(highest, gust);
      if (gust > limitMps) close(item, lift.settleMinutes ?? 0);
    }
    if (item.row.lightning) close(item, lift.lightningMinutes ?? 30);
    if (lift.coldestC !== undefined && (item.row.temperatureC ?? Infinity) < lift.coldestC)
      close(item, 0);
  }
  const inWindow = intersect(unionOf(closed), unionOf([window]));
  const unknown = subtract(subtract(unionOf([window]), unionOf(known)), inWindow);
  const lostMinutes = totalMinutes(inWindow);
  return {
    limitMps,
    closed: inWindow,
    unknown,
    lostMinutes,
    openMinutes: totalMinutes(unionOf([window])) - lostMinutes - totalMinutes(unknown),
    ...(highest >= 0 && { highestGustMps: highest }),
    note,
  };
}
