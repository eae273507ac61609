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
  const standing = windows.filter((one) => one.status !== 'withdrawn');
  const open = standing.filter((one) => one.start <= at && at < one.end);
  if (open.length > 0) return open.filter(takesWork);
  const [last] = standing
    .filter(takesWork)
    .filter((one) => one.end <= at && at < addMinutes(one.end, LATE))
    .sort((a, b) => b.end - a.end);
  return last ? [last] : [];
}
