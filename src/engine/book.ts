import { periodsTouched, periodText } from '../calendar/index.js';
import {
  phrasesOf,
  type AccessWindow,
  type BookingCount,
  type Plan,
  type Told,
} from '../model/index.js';
import {
  daysTouched,
  exampleBooking,
  milestonesFor,
  restrictionClass,
  type BookingRules,
} from '../rules/booking/index.js';
import type { bookingCalendarSentences } from './english/booking-calendar.js';
import type { BookingCalendar } from './booking-calendar.js';
import type { BookAnswer, BookedWindow, BookRequest } from './types.js';

/**
 * Booking dates of every window, as they stand at `now`.
 *
 * @param count How lead times are counted in this plan; absent: as the rules say.
 *
 * @param about The plan of work for which it is booked, for the calendar file.
 * @param name Of the plan: entries of the calendar file are told apart by it, so it must stay the same.
 */
export function bookOf(
  plan: Plan,
  name: string,
  request: BookRequest,
  count?: BookingCount,
  about?: BookingCalendar['about'],
): BookAnswer {
  const { now } = request;
  const rules: BookingRules = { ...(request.rules ?? exampleBooking), ...count };
  const windows = plan.windows.map((window) =>
    bookedWindow(window, rules, request.sharePercent?.[window.id]),
  );
  const milestones = plan.windows.flatMap((window, at) =>
    milestonesFor(window, rules, now, {
      ...(window.addedAt !== undefined && { addedAt: window.addedAt }),
      ...(windows[at]!.restriction !== null && { restriction: windows[at]!.restriction }),
    }),
  );
  return {
    rules: rules.name,
    weeksFrom: rules.weeksFrom,
    weekStarts: rules.weekStarts,
    milestones,
    windows,
    calendar: { name, stamp: now, ...(about !== undefined && { about }) },
  };
}

/** What is said under every entry of the document, and of the plan of work that was agreed, if one was. */
export const bookedFor = (document: string, plan: Told | null): Told =>
  phrasesOf<typeof bookingCalendarSentences>()('booking-about', { document, plan });

/** Days, share and class of one window, and the periods it lies in. */
function bookedWindow(
  window: AccessWindow,
  rules: BookingRules,
  asked: number | undefined,
): BookedWindow {
  const days = daysTouched(window);
  const sharePercent = asked ?? window.trainsHitPercent ?? null;
  return {
    window: window.id,
    days,
    sharePercent,
    restriction: sharePercent === null ? null : restrictionClass(days, sharePercent, rules),
    periods: periodsTouched(window, window.zone).map(periodText),
  };
}
