import type { Due } from './dues.js';
import type { DelayBound } from './delay-bound.js';
import type { ClaimedKeyDate, ReportFault } from './types.js';
import { MINUTE, type Instant } from './plan-types.js';
import { endOf, isAllPlaced } from './work.js';

/** When all of it finishes; null while some of it is unplaced. */
export function forecastOf(due: Due): Instant | null {
  return due.jobs.every(isAllPlaced) ? Math.max(...due.jobs.map(endOf)) : null;
}

/** Checks that each key date is listed once, with its date, the forecast of the placements, and whether that meets it. */
export function checkKeyDates(
  dues: readonly Due[],
  claimed: readonly ClaimedKeyDate[],
  bound: DelayBound,
  report: ReportFault,
): void {
  const left = [...claimed];
  for (const due of dues) {
    const say = (code: string, text: string): void =>
      report({ code, package: due.package, text: `the key date of ${due.package} ${text}` });
    const at = left.findIndex((date) => date.package === due.package && date.due === due.due);
    const [claim] = at < 0 ? [] : left.splice(at, 1);
    if (!claim) {
      say('key-date-missing', 'is missing or has another date');
      continue;
    }
    const forecast = forecastOf(due);
    if (claim.forecast !== forecast) say('forecast', 'has a forecast that the plan does not make');
    const met = forecast !== null && forecast <= due.due;
    if (claim.met !== met)
      say('met', met ? 'is met but stated as missed' : 'is stated as met but is not');
    if (forecast === null) {
      if (claim.floatMinutes !== null) say('key-date-float', 'has float though work is not placed');
    } else if (claim.floatMinutes !== null) {
      const why = whyFloatTooLarge(claim.floatMinutes, due, forecast, bound);
      if (why !== undefined) say('key-date-float', why);
    }
  }
  for (const { package: pack } of left)
    report({
      code: 'key-date-extra',
      package: pack,
      text: `a key date is stated for ${pack} that the plan does not have`,
    });
}

/**
 * Why a package cannot slip by its float, judged by links and usable time only. Late work must have minus the minutes
 * late as its float.
 */
function whyFloatTooLarge(
  float: number,
  due: Due,
  forecast: Instant,
  bound: DelayBound,
): string | undefined {
  const left = Math.round((due.due - forecast) / MINUTE);
  if (left < 0) return float === left ? undefined : 'is late by other minutes than its float says';
  if (float > left) return 'has more float than there is time up to it';
  if (float <= 0) return undefined;
  for (const job of due.jobs) {
    if (endOf(job) !== forecast) continue;
    const delayed = bound.firstDelayed(job.activity.id, forecast + float * MINUTE);
    if (delayed !== undefined) return `has more float than ${delayed} leaves when it is pushed on`;
  }
  return undefined;
}
