import { overlaps } from '../../calendar/index.js';
import { because, type LiftingSettings } from '../../model/index.js';
import {
  gustOf,
  liftingClosedTime,
  liftingHours,
  liftOf,
  lifts,
  reducedLimit,
  stretchesOf,
} from '../../rules/conditions/index.js';
import type { PlanResult } from '../../tables/index.js';
import type { WindAnswer } from './types.js';

/** The forecast against the limit for lifting, with what it costs each window that it reaches. */
export function windOf(
  { plan, forecast }: PlanResult,
  settings: LiftingSettings,
): Omit<WindAnswer, 'isExample'> {
  const weather = stretchesOf(forecast);
  const lift = liftOf(settings);
  const [first, last] = [weather[0], weather.at(-1)];
  const reach = first && last && { start: first.start, end: last.end };
  return {
    settings,
    limitMps: settings.load
      ? reducedLimit(settings.chartLimitMps, settings.load)
      : settings.chartLimitMps,
    gusts: weather.map(({ start, end, row }) => ({
      start,
      end,
      gustMps: gustOf(row, settings.heightMetres) ?? null,
    })),
    stops: liftingClosedTime(settings, forecast).flatMap((closedTime) =>
      closedTime.stretches.map((stretch) => ({ ...stretch, ...because(closedTime.why) })),
    ),
    windows: plan.windows
      .filter((window) => window.status !== 'withdrawn' && reach && overlaps(window, reach))
      .map((window) => ({
        ...liftingHours(weather, lift, window),
        window: window.id,
        zone: window.zone,
        start: window.start,
        end: window.end,
      })),
    activities: plan.activities
      .filter((activity) => lifts(activity, settings))
      .map((activity) => activity.id),
  };
}
