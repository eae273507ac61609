import type { Plan } from '../model/index.js';
import { exampleBooking, milestoneEvents, milestonesFor } from '../rules/booking/index.js';
import { calendarFile } from '../tables/index.js';
import type { BookAnswer, BookRequest } from './types.js';

/**
 * Booking dates of every window, as they stand at `now`.
 *
 * @param name Of the plan: entries of the calendar file are told apart by it, so it must stay the same.
 */
export function bookOf(
  plan: Plan,
  name: string,
  { now, rules = exampleBooking }: BookRequest,
): BookAnswer {
  const milestones = plan.windows.flatMap((window) => milestonesFor(window, rules, now));
  return {
    rules: rules.name,
    milestones,
    calendar: calendarFile(milestoneEvents(milestones, name), now),
  };
}
