import { addMinutes, type Instant } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';

/** So long after a booked end a shift that runs late is still told of, in minutes. */
const LATE = 1440;

/**
 * The windows whose shift is on at a moment: those that are open and, where none is, the last whose booked end has
 * passed less than a day ago, as it may not have been handed back. Withdrawn windows have no shift, and of the others
 * only those that take work are told of.
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
