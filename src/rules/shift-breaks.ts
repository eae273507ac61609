import { MINUTE, type Interval } from '../calendar/index.js';
import { together, type ShiftRule } from '../model/index.js';
import type { Claim } from './claim.js';
import { sayOfLedger, sourceOf } from './ledger-sentences.js';

/**
 * Shift changeovers of a window longer than one shift: the last minutes of every full shift, in elapsed time from the
 * start of the window. A shift that ends with the window has none.
 */
export function shiftBreaks(window: Interval, shifts: ShiftRule | undefined): readonly Claim[] {
  if (!shifts || shifts.changeoverMinutes === 0) return [];
  const shift = shifts.longestMinutes * MINUTE;
  if (window.start + shift >= window.end) return [];
  const lasts = { longest: shifts.longestMinutes, changeover: shifts.changeoverMinutes };
  const why = together([sayOfLedger('shift-lasts', lasts), ...sourceOf(shifts.source)]);
  const breaks: Claim[] = [];
  for (let end = window.start + shift; end < window.end; end += shift)
    breaks.push({
      start: end - shifts.changeoverMinutes * MINUTE,
      end,
      rule: sayOfLedger('shift-changeover', {}),
      kind: 'shift-break',
      why,
    });
  return breaks;
}
