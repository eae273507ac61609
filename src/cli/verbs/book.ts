import { durationText, isoText, type Instant } from '../../calendar/index.js';
import type { Placement, Plan } from '../../model/index.js';
import { bookOf } from '../../engine/book.js';
import { bookingCalendar } from '../../engine/booked-calendar.js';
import { inTwoText, type BookingRules } from '../../rules/booking/index.js';
import type { Answer } from '../answer.js';
import type { BookAnswerJson } from '../answers/book.js';
import type { Arguments } from '../arguments.js';
import { clockWords } from '../../calendar/clock-words.js';
import { planLines, planOfWork } from '../plan-of-work.js';
import type { GivenFile } from '../read/read-plan.js';
import { table } from '../print/blocks.js';
import { writeFileOf } from '../write-file.js';

/** `book`: what has to be asked, offered and published by when, and its state at `now`. */
export function book(
  plan: Plan,
  asked: Arguments,
  rules: BookingRules,
  now: Instant,
  given?: GivenFile,
): Answer<BookAnswerJson> {
  const work = given && planOfWork(plan, asked, given);
  const {
    milestones: found,
    calendar,
    windows,
  } = bookOf(
    plan,
    rules.name,
    { now, rules },
    undefined,
    work ? planLines(work)[0] : 'No plan of work was given.',
  );
  const statuses = new Map(plan.windows.map((window) => [window.id, window.status]));
  const milestones = found.map((milestone) => ({
    window: milestone.window,
    status: statuses.get(milestone.window),
    milestone: milestone.milestone,
    ...(milestone.by !== undefined && { by: milestone.by }),
    due: isoText(milestone.due, milestone.zone),
    state: milestone.state,
    minutesLeft: milestone.minutesLeft,
    before: milestone.before,
    ...(milestone.inTwo && { note: inTwoText(milestone) }),
    source: milestone.source,
    sureness: milestone.sureness,
  }));
  writeFileOf('calendar', asked, bookingCalendar({ milestones: found, calendar }));
  const rows = found.map((milestone) => [
    milestone.window,
    statuses.get(milestone.window) ?? '',
    milestone.milestone,
    clockWords(milestone.due, milestone.zone),
    milestone.state,
    `${durationText(Math.abs(milestone.minutesLeft))} ${milestone.minutesLeft < 0 ? 'ago' : 'left'}`,
  ]);
  // A plan of work shows which windows, and so which dates, are for work.
  const worked = work
    ? windows.map((window) => ({
        ...window,
        work: workIn(work.allocation.placements, window.window),
      }))
    : windows;
  const text = [
    ...(work ? [...planLines(work), ''] : []),
    `Booking dates by "${rules.name}", as at ${clockWords(now, plan.zone)}. ${weeksText(rules)}`,
    '',
    table(['window', 'status', 'milestone', 'due', 'state', ''], rows),
    ...found
      .filter((milestone) => milestone.inTwo)
      .map((milestone) => `${milestone.window}, ${milestone.milestone}: ${inTwoText(milestone)}`),
    '',
    table(
      ['window', 'days', 'trains hit', 'class', 'four-week periods', ...(work ? ['work'] : [])],
      windows.map((window) => [
        window.window,
        String(window.days),
        window.sharePercent === null ? 'not said' : `${window.sharePercent} %`,
        window.restriction ?? 'not known',
        window.periods.join(', '),
        ...(work ? [workIn(work.allocation.placements, window.window).join(', ')] : []),
      ]),
    ),
    ...(asked.calendar === undefined ? [] : ['', `Written: ${asked.calendar}`]),
  ];
  return {
    json: {
      ...(work && { plan: work.plan, broken: work.broken }),
      rules: rules.name,
      weeksFrom: rules.weeksFrom,
      weekStarts: rules.weekStarts,
      asAt: isoText(now, plan.zone),
      milestones,
      windows: worked,
    },
    notes: work?.notes ?? [],
    text,
  };
}

/** What lead times in weeks are counted back from, in words. */
const weeksText = ({ weeksFrom, weekStarts }: BookingRules): string =>
  weeksFrom === 'window'
    ? 'Weeks are counted from the day of the window ("weeksFrom" of the booking rules says so).'
    : `Weeks are counted from the planning week, which begins on ${weekStarts}.`;

/** The activities placed in a window, sorted by start. */
function workIn(placements: readonly Placement[], window: string): string[] {
  const own = placements.filter((placement) => placement.window === window);
  return [
    ...new Set(own.toSorted((a, b) => a.from - b.from).map((placement) => placement.activity)),
  ];
}
