import { addMinutes, type Instant } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';

/** How long after its booked end a late shift is still reported, in minutes. */
const LATE = 1440;

/**
 * The windows with a shift at a moment: those that are open, or if none is, the last one whose booked end was less than
 * a day ago, as it may not have been handed back. Only windows that take work count, and no withdrawn ones.
 */
export function inShift(
  windows: readonly AccessWindow[],
  at: Instant,
  takesWork: (window: AccessWindow) => boolean = () => true,
): readonly AccessWindow[] {
  const standing = windows.filter((window) => window.status !== 'withdrawn');
  const open = standing.filter((window) => window.start <= at && at < window.end);
  if (open.length > 0) return open.filter(takesWork);
  const [last] = standing
    .filter(takesWork)
    .filter((window) => window.end <= at && at < addMinutes(window.end, LATE))
    .sort((a, b) => b.end - a.end);
  return last ? [last] : [];
}
