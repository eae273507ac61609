import type { PlanDocument } from '../model/index.js';
import { exampleBooking, milestoneEvents, milestonesFor } from '../rules/booking/index.js';
import { calendarFile, planFromDocument } from '../tables/index.js';
import type { BookAnswer, BookRequest } from './types.js';

/** Booking dates of every window, as they stand at `now`. */
export function bookOf(
  document: PlanDocument,
  { now, rules = exampleBooking }: BookRequest,
): BookAnswer {
  const { plan } = planFromDocument(document);
  const milestones = plan.windows.flatMap((window) => milestonesFor(window, rules, now));
  return {
    rules: rules.name,
    milestones,
    calendar: calendarFile(milestoneEvents(milestones, document.name), now),
  };
}
