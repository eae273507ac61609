import type { Instant } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { HandbackResult } from '../../risk/index.js';
import { english } from '../english/say.js';
import { cutOffCalendarIn } from './cut-off-events.js';

/**
 * Cut-offs, points of no return, latest abandonments, go/no-go points and booked ends as an iCalendar file (RFC 5545),
 * stamped `now`, in English. What has begun has no cut-off any more. The same cut-off in a later file has the same uid and
 * moves the entry.
 *
 * @param about The plan of work that the times come from, in words: it stands under every entry.
 */
export const cutOffCalendar = (
  results: readonly HandbackResult[],
  windows: readonly AccessWindow[],
  now: Instant,
  about?: string,
): string => cutOffCalendarIn(english, results, windows, now, about);
