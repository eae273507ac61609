import { cautions, phrasesOf, type SayPhrase, type Told } from '../model/index.js';
import type { Milestone } from '../rules/booking/index.js';
import type { Instant } from '../calendar/index.js';
import { calendarFile } from '../tables/write/calendar-file.js';
import type { bookingCalendarSentences } from './english/booking-calendar.js';
import { cautionsSaid } from './report/say.js';

const sentence = phrasesOf<typeof bookingCalendarSentences>();

/** What a calendar of booking dates is made with, beside its dates. */
export interface BookingCalendar {
  /** Of the plan: entries are told apart by it, so it must stay the same. */
  readonly name: string;
  /** When it is written. */
  readonly stamp: Instant;
  /** The plan of work for which it is booked: it stands under every entry. Absent: nothing is said of one. */
  readonly about?: Told;
}

/**
 * Booking dates as an iCalendar file (RFC 5545). Those already met are left out; those of a withdrawn window are
 * cancelled, so that a calendar that has them removes them. The same date in a later file has the same uid and moves the entry.
 *
 * @param say In the words of whoever saves it.
 */
export function bookingCalendarIn(
  say: SayPhrase,
  milestones: readonly Milestone[],
  { name, stamp, about }: BookingCalendar,
): string {
  const warned = cautionsSaid(cautions).map(say);
  const events = milestones
    .filter((milestone) => milestone.state !== 'met')
    .map(({ window, milestone, due, zone, by, state, inTwo, before, source, sureness }) => ({
      uid: `${[name, window, milestone].map(encoded).join('/')}@possession-fit`,
      start: due,
      summary: `${window}: ${milestone}`,
      description: [
        ...[
          sentence('booking-due', { due: { at: due, zone } }),
          ...(by === undefined ? [] : [sentence('booking-by', { by })]),
          sentence('booking-state', { state }),
          ...(inTwo ? [sentence('booking-in-two', { anchor: before })] : []),
          sentence('booking-source', { source, sureness }),
        ].map(say),
        ...warned,
      ].join('\n'),
      sequence: 0,
      cancelled: state === 'not needed',
    }));
  return calendarFile(events, stamp, about === undefined ? undefined : say(about), warned);
}

/** A lone surrogate, left by a truncated paste, cannot be encoded. */
function encoded(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD'));
}
