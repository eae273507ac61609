export {
  bookingRulesSchema,
  milestoneSchema,
  restrictionClassSchema,
  type Anchor,
  type BookingRules,
  type MilestoneRule,
} from './booking-rules.js';
export { anchorDay, dueBefore, type PeriodStart } from './due-date.js';
export { exampleBooking } from './example-booking.js';
export { inTwoText } from './in-two.js';
export {
  milestonesFor,
  type Milestone,
  type MilestoneOptions,
  type MilestoneState,
} from './milestones.js';
export { daysTouched, restrictionClass } from './restriction-class.js';
export { timetableChange, timetableSaturday } from './timetable-change.js';
