import type { ReportFault } from './types.js';
import { MINUTE } from './plan-types.js';
import type { Job } from './work.js';

/** Checks minutes and units, that whole work is in one piece, and that pieces of one activity do not overlap. */
export function checkAmounts({ activity, left, placed, pieces }: Job, report: ReportFault): void {
  const { id, work } = activity;
  const say = (code: string, text: string): void =>
    report({ code, activity: id, text: `${id} ${text}` });
  if (pieces.length === 0) return;
  if (left === 0) say('already-done', 'is placed though nothing of it is left');
  if (work.kind === 'whole' && pieces.length > 1) say('split', 'is placed more than once');
  let busyUntil = Number.NEGATIVE_INFINITY;
  for (const { from, to, units } of pieces) {
    if (from < busyUntil) say('overlap', 'has two pieces at the same time');
    busyUntil = Math.max(busyUntil, to);
    let needed: number;
    if (work.kind === 'whole') needed = work.minutes;
    else {
      const count = units ?? 0;
      if (!Number.isInteger(count) || count < 1) say('units', `has a piece of ${count} units`);
      needed = work.setUpMinutes + count * work.minutesPerUnit + work.makeSafeMinutes;
    }
    if (to - from !== needed * MINUTE)
      say('minutes', `is given ${Math.round((to - from) / MINUTE)} minutes and takes ${needed}`);
  }
  if (work.kind === 'units' && placed > left)
    say('units', `is given ${placed} units and has ${left} left`);
}
