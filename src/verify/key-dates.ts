import type { Due } from './dues.js';
import type { DelayBound } from './delay-bound.js';
import type { ClaimedKeyDate, ReportFault } from './types.js';
import { MINUTE, type Instant, type Phrase } from './plan-types.js';
import { say } from './say.js';
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
    const own = { package: due.package };
    const found = (code: string, text: Phrase): void => report({ code, ...own, text });
    const at = left.findIndex((date) => date.package === due.package && date.due === due.due);
    const [claim] = at < 0 ? [] : left.splice(at, 1);
    if (!claim) {
      found('key-date-missing', say('key-date-missing', own));
      continue;
    }
    const forecast = forecastOf(due);
    if (claim.forecast !== forecast) found('forecast', say('key-date-forecast', own));
    const met = forecast !== null && forecast <= due.due;
    if (claim.met !== met)
      found('met', say(met ? 'key-date-stated-missed' : 'key-date-stated-met', own));
    if (forecast === null) {
      if (claim.floatMinutes !== null) found('key-date-float', say('key-date-float-unplaced', own));
    } else if (claim.floatMinutes !== null) {
      const why = whyFloatTooLarge(claim.floatMinutes, due, forecast, bound);
      if (why !== undefined) found('key-date-float', why);
    }
  }
  for (const { package: pack } of left)
    report({
      code: 'key-date-extra',
      package: pack,
      text: say('key-date-extra', { package: pack }),
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
): Phrase | undefined {
  const own = { package: due.package };
  const left = Math.round((due.due - forecast) / MINUTE);
  if (left < 0) return float === left ? undefined : say('key-date-late-otherwise', own);
  if (float > left) return say('key-date-float-too-long', own);
  if (float <= 0) return undefined;
  for (const job of due.jobs) {
    if (endOf(job) !== forecast) continue;
    const delayed = bound.firstDelayed(job.activity.id, forecast + float * MINUTE);
    if (delayed !== undefined) return say('key-date-float-pushed', { ...own, activity: delayed });
  }
  return undefined;
}
