import type { Due } from './dues.js';
import type { PushOn } from './push-on.js';
import type { ClaimedKeyDate, Tell } from './types.js';
import { MINUTE, type Instant } from './words.js';
import { endOf, isAllPlaced } from './work.js';

/** When all of it is finished; null while some of it has no place. */
export function forecastOf(due: Due): Instant | null {
  return due.jobs.every(isAllPlaced) ? Math.max(...due.jobs.map(endOf)) : null;
}

/** Each key date is told of once, with its own date, the forecast that the placements make, and whether that meets it. */
export function checkKeyDates(
  dues: readonly Due[],
  claimed: readonly ClaimedKeyDate[],
  push: PushOn,
  tell: Tell,
): void {
  const left = [...claimed];
  for (const due of dues) {
    const say = (code: string, text: string): void =>
      tell({ code, package: due.package, text: `the key date of ${due.package} ${text}` });
    const at = left.findIndex((date) => date.package === due.package && date.due === due.due);
    const [claim] = at < 0 ? [] : left.splice(at, 1);
    if (!claim) {
      say('key-date-missing', 'is not told, or with another date');
      continue;
    }
    const forecast = forecastOf(due);
    if (claim.forecast !== forecast) say('forecast', 'has a forecast that the plan does not make');
    const met = forecast !== null && forecast <= due.due;
    if (claim.met !== met) say('met', met ? 'is met and told as missed' : 'is told as met');
    if (forecast === null) {
      if (claim.floatMinutes !== null) say('key-date-float', 'has float though work is not placed');
    } else if (claim.floatMinutes !== null) {
      const why = tooMuch(claim.floatMinutes, due, forecast, push);
      if (why !== undefined) say('key-date-float', why);
    }
  }
  for (const { package: pack } of left)
    tell({
      code: 'key-date-extra',
      package: pack,
      text: `a key date is told of ${pack} that the plan has not`,
    });
}

/** Why a package cannot slip so far, as far as links and usable time alone tell; minus the minutes late where it is. */
function tooMuch(float: number, due: Due, forecast: Instant, push: PushOn): string | undefined {
  const left = Math.round((due.due - forecast) / MINUTE);
  if (left < 0) return float === left ? undefined : 'is late by other minutes than its float says';
  if (float > left) return 'has more float than there is time up to it';
  if (float <= 0) return undefined;
  for (const job of due.jobs) {
    if (endOf(job) !== forecast) continue;
    const hurt = push.firstHurt(job.activity.id, forecast + float * MINUTE);
    if (hurt !== undefined) return `has more float than ${hurt} leaves when it is pushed on`;
  }
  return undefined;
}
