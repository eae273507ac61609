import { MINUTE, type Phrase } from './plan-types.js';
import { say } from './say.js';
import type { ReportFault } from './types.js';
import type { Job } from './work.js';

/** Checks minutes and units, that whole work is in one piece, and that pieces of one activity do not overlap. */
export function checkAmounts({ activity, left, placed, pieces }: Job, report: ReportFault): void {
  const { id, work } = activity;
  const found = (code: string, text: Phrase): void => report({ code, activity: id, text });
  const own = { activity: id };
  if (pieces.length === 0) return;
  if (left === 0) found('already-done', say('placed-with-none-left', own));
  if (work.kind === 'whole' && pieces.length > 1) found('split', say('placed-more-than-once', own));
  let busyUntil = Number.NEGATIVE_INFINITY;
  for (const { from, to, units } of pieces) {
    if (from < busyUntil) found('overlap', say('two-pieces-at-once', own));
    busyUntil = Math.max(busyUntil, to);
    let needed: number;
    if (work.kind === 'whole') needed = work.minutes;
    else {
      const count = units ?? 0;
      if (!Number.isInteger(count) || count < 1)
        found('units', say('piece-of-units', { ...own, units: count }));
      needed = work.setUpMinutes + count * work.minutesPerUnit + work.makeSafeMinutes;
    }
    if (to - from !== needed * MINUTE)
      found(
        'minutes',
        say('minutes-given', { ...own, minutes: Math.round((to - from) / MINUTE), needed }),
      );
  }
  if (work.kind === 'units' && placed > left)
    found('units', say('units-given', { ...own, units: placed, left }));
}
