import { bookingRulesSchema, type BookingRules } from './booking-rules.js';

const forum = 'a rail forum post quoting the network code, part D (2019)';
const class2017 =
  'Commission Delegated Decision (EU) 2017/2075, as tabled on a European infrastructure managers’ page';

/**
 * Lead times as published, to start from and to edit: those of Great Britain, and the European ones by class of
 * restriction. Local agreements and the current code come first.
 */
export const exampleBooking: BookingRules = bookingRulesSchema.parse({
  schema: 1,
  name: 'Published lead times, to be checked against the current code',
  weeksFrom: 'window',
  weekStarts: 'sat',
  milestones: [
    {
      milestone: 'Possession planning begins',
      by: 'access planner',
      weeks: 30,
      metWhen: 'requested',
      source: forum,
      sureness: 'read second-hand',
    },
    {
      milestone: 'Period possession plan confirmed',
      by: 'infrastructure manager',
      before: 'four-week period',
      weeks: 26,
      metWhen: 'confirmed',
      source: forum,
      sureness: 'read second-hand',
    },
    {
      milestone: 'Notified for compensation at the lower band',
      by: 'infrastructure manager',
      weeks: 22,
      source: 'a market clause library, “Notification by TW-22”',
      sureness: 'read',
    },
    {
      milestone: 'Operators bid amended trains',
      by: 'operators',
      weeks: 18,
      source: forum,
      sureness: 'read second-hand',
    },
    {
      milestone: 'Amended trains offered',
      by: 'infrastructure manager',
      weeks: 14,
      source: forum,
      sureness: 'read second-hand',
    },
    {
      milestone: 'In the working timetable',
      by: 'infrastructure manager',
      weeks: 12,
      time: '22:00',
      source: 'a market clause library: 22:00 on the day 12 weeks before the restriction day',
      sureness: 'read',
    },
    {
      milestone: 'First published, 24 months before the timetable',
      by: 'infrastructure manager',
      before: 'timetable change',
      months: 24,
      classes: ['major', 'high'],
      source: class2017,
      sureness: 'read',
    },
    {
      milestone: 'Coordinated across networks, 18 months before the timetable',
      by: 'infrastructure manager',
      before: 'timetable change',
      months: 18,
      classes: ['major'],
      source: class2017,
      sureness: 'read',
    },
    {
      milestone: 'Coordinated across networks, 13 months and 15 days before the timetable',
      by: 'infrastructure manager',
      before: 'timetable change',
      months: 13,
      days: 15,
      classes: ['high', 'medium'],
      source: class2017,
      sureness: 'read',
    },
    {
      milestone: 'Published 12 months before the timetable',
      by: 'infrastructure manager',
      before: 'timetable change',
      months: 12,
      classes: ['high', 'medium'],
      source: `${class2017}; for high impact from memory`,
      sureness: 'from memory',
    },
    {
      milestone: 'Published 4 months before the timetable',
      by: 'infrastructure manager',
      before: 'timetable change',
      months: 4,
      classes: ['minor'],
      source: class2017,
      sureness: 'read',
    },
    {
      milestone: 'Passenger operators told of altered paths',
      by: 'infrastructure manager',
      days: 135,
      classes: ['major', 'high', 'medium', 'minor'],
      source: 'a European infrastructure managers’ page: T-135',
      sureness: 'read',
    },
    {
      milestone: 'Freight operators told of altered paths',
      by: 'infrastructure manager',
      days: 45,
      classes: ['major', 'high', 'medium', 'minor'],
      source: 'a European infrastructure managers’ page: T-45',
      sureness: 'read',
    },
  ],
  classes: [
    { class: 'major', daysOver: 30, shareOver: 50, source: class2017, sureness: 'read' },
    { class: 'high', daysOver: 7, shareOver: 30, source: class2017, sureness: 'read' },
    { class: 'medium', daysAtMost: 7, shareOver: 50, source: class2017, sureness: 'read' },
    { class: 'minor', shareOver: 10, source: class2017, sureness: 'read' },
  ],
  otherwise: 'less than minor',
  note: 'A regulation that replaces the European classes was in progress: check its status. The page read prints “more than 10 %” for less than minor, a misprint.',
});
