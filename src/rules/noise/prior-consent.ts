import { minutesBetween, startOfLocalDay, type Instant } from '../../calendar/index.js';
import { screeningOnly } from './prediction.js';

export interface ConsentDates {
  /** Start of the local day before whose end the application must reach the authority. */
  readonly applyBy: Instant;
  /** Start of the local day on which talks with the authority must begin. */
  readonly talkBy: Instant;
  readonly state: 'in time' | 'too late for talks' | 'too late';
  /** Minutes from `now` to the end of the day to apply by; negative when past. */
  readonly minutesLeft: number;
  readonly note: string;
}

/**
 * The last days on which to apply for prior consent for noise, and to begin talks about it.
 *
 * @see Control of Pollution Act 1974, section 61: the authority decides within 28 days of receipt; from memory. The
 * time for talks before an application is the authority's own.
 */
export function consentDates(
  start: Instant,
  now: Instant,
  setting: { readonly zone: string; readonly decisionDays?: number; readonly talkDays?: number },
): ConsentDates {
  const { zone, decisionDays = 28, talkDays = 0 } = setting;
  const applyBy = startOfLocalDay(start, zone, -decisionDays);
  const talkBy = startOfLocalDay(start, zone, -decisionDays - talkDays);
  const applyEnds = startOfLocalDay(applyBy, zone, 1);
  const talkEnds = startOfLocalDay(talkBy, zone, 1);
  return {
    applyBy,
    talkBy,
    state: now >= applyEnds ? 'too late' : now >= talkEnds ? 'too late for talks' : 'in time',
    minutesLeft: minutesBetween(now, applyEnds),
    note: screeningOnly,
  };
}
