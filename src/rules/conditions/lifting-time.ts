import { HOUR, type Instant } from '../../calendar/index.js';
import {
  together,
  type Activity,
  type ClosedTime,
  type LiftingSettings,
  type WeatherRow,
  type Worded,
} from '../../model/index.js';
import { sayOfLedger } from '../ledger-sentences.js';
import { weatherOf, type Weather } from './forecast.js';
import { gustOf, liftingHours, type Lift } from './lifting.js';

/** The name of closed time that lifting work obeys. */
export const liftingClosedName = 'lifting';

export function liftOf(settings: LiftingSettings): Lift {
  const { load, coldestC, ...rest } = settings;
  return { ...rest, ...(load && { load }), ...(coldestC !== undefined && { coldestC }) };
}

/** Whether an activity lifts: whether it needs a resource that the settings name. */
export function lifts(activity: Pick<Activity, 'resources'>, settings: LiftingSettings): boolean {
  return activity.resources.some((resource) => settings.resources.includes(resource.resource));
}

/** Rows as intervals. The last lasts as long as the one before it, or an hour when it is the only one. */
export function stretchesOf(rows: readonly WeatherRow[]): readonly Weather[] {
  const last = rows.at(-1);
  if (!last) return [];
  const step = last.at - (rows.at(-2)?.at ?? last.at - HOUR);
  return weatherOf(rows, last.at + step).weather;
}

/** Times at which a forecast closes lifting, each with the figure that closes it. */
export function liftingClosedTime(
  settings: LiftingSettings,
  rows: readonly WeatherRow[],
): readonly ClosedTime[] {
  const weather = stretchesOf(rows);
  const [first, last] = [weather[0], weather.at(-1)];
  if (!first || !last) return [];
  const waits = Math.max(settings.settleMinutes, settings.lightningMinutes) * 60_000;
  const lift = liftOf(settings);
  const { closed, limitMps } = liftingHours(weather, lift, {
    start: first.start,
    end: last.end + waits,
  });
  return closed.map((stretch) => ({
    name: liftingClosedName,
    rule: sayOfLedger('lifting-stopped', {}),
    why: together([
      ...causes(weather, lift, limitMps, stretch.start, stretch.end),
      sayOfLedger('wind-decides', { source: settings.source }),
    ]),
    stretches: [stretch],
    daily: [],
  }));
}

function causes(
  weather: readonly Weather[],
  lift: Lift,
  limitMps: number,
  from: Instant,
  to: Instant,
): readonly Worded[] {
  const inIt = weather.filter((item) => item.start < to && item.end > from);
  const gust = Math.max(0, ...inIt.map((item) => gustOf(item.row, lift.heightMetres) ?? 0));
  const coldest = Math.min(...inIt.map((item) => item.row.temperatureC ?? Infinity));
  return [
    ...(gust > limitMps
      ? [sayOfLedger('gusts-over', { gust, height: lift.heightMetres, limit: limitMps })]
      : []),
    ...(inIt.some((item) => item.row.lightning) ? [sayOfLedger('lightning', {})] : []),
    ...(lift.coldestC !== undefined && coldest < lift.coldestC
      ? [sayOfLedger('too-cold', { coldest, limit: lift.coldestC })]
      : []),
  ];
}
