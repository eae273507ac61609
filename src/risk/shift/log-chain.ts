import type { ShiftEntry, ShiftLog } from './shift-log.js';
import { stampOf } from './stamp.js';

/**
 * A stamp for each entry that hangs on it and on all before it: whoever changes, takes out or puts in a line changes
 * every stamp from there on. It shows a change by mistake or by hand; it is no proof against somebody who works the
 * stamps out anew.
 */
export function chainOf(log: ShiftLog): readonly string[] {
  let before = '';
  return log.map((entry: ShiftEntry) => (before = stampOf([before, entry])));
}
