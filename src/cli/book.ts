import { durationText, isoText, type Instant } from '../calendar/index.js';
import type { Plan } from '../model/index.js';
import { bookOf } from '../engine/book.js';
import type { BookingRules } from '../rules/booking/index.js';
import type { Answer } from './answer.js';
import type { Arguments } from './arguments.js';
import { clockWords } from './clock-words.js';
import { textTable } from './text-table.js';
import { writeCalendar } from './write-calendar.js';

/**
 * `book`: what has to be asked, offered and published by when, and how it stands at `now`.
 */
export function book(plan: Plan, asked: Arguments, rules: BookingRules, now: Instant): Answer {
  const { milestones: found, calendar: file, windows } = bookOf(plan, rules.name, { now, rules });
  const milestones = found.map((one) => ({
    window: one.window,
    milestone: one.milestone,
    ...(one.by !== undefined && { by: one.by }),
    due: isoText(one.due, one.zone),
    state: one.state,
    minutesLeft: one.minutesLeft,
    before: one.before,
    ...(one.note !== undefined && { note: one.note }),
    source: one.source,
    sureness: one.sureness,
  }));
  writeCalendar(asked, file);
  const rows = found.map((one) => [
    one.window,
    one.milestone,
    clockWords(one.due, one.zone),
    one.state,
    `${durationText(Math.abs(one.minutesLeft))} ${one.minutesLeft < 0 ? 'ago' : 'left'}`,
  ]);
  const text = [
    `Booking dates by "${rules.name}", as at ${clockWords(now, plan.zone)}.`,
    '',
    textTable(['window', 'milestone', 'due', 'state', ''], rows),
    '',
    textTable(
      ['window', 'days', 'trains hit', 'class', 'four-week periods'],
      windows.map((one) => [
        one.window,
        String(one.days),
        one.sharePercent === null ? 'not said' : `${one.sharePercent} %`,
        one.restriction ?? 'not known',
        one.periods.join(', '),
      ]),
    ),
    ...(asked.calendar === undefined ? [] : ['', `Written: ${asked.calendar}`]),
  ].join('\n');
  return { json: { rules: rules.name, asAt: isoText(now, plan.zone), milestones, windows }, text };
}
