import { bookingCalendarIn } from './booking-calendar.js';
import { english } from './english/say.js';
import type { BookAnswer } from './types.js';

/** Booking dates as an iCalendar file (RFC 5545), stamped with the moment of the answer, in English. */
export const bookingCalendar = ({
  milestones,
  calendar,
}: Pick<BookAnswer, 'milestones' | 'calendar'>): string =>
  bookingCalendarIn(english, milestones, calendar);
