import { durationText, type Instant } from '../../calendar/index.js';
import { byTime, cautions } from '../../model/index.js';
import { calendarFile, type CalendarEvent } from '../../tables/write/calendar-file.js';
import { planNameText, minuteText } from './plan-name.js';
import { clockOf, pieceText, workText, type PlanOut } from './plan-sheets.js';

/**
 * A plan of work as an iCalendar file (RFC 5545), stamped `now`: an event for each window with work in it, for each piece
 * of work and for each key date. Names hang on document, window, activity and the count of its visits, so a later file
 * moves an entry and does not double it.
 */
export function planCalendar(out: PlanOut, now: Instant): string {
  return calendarFile([...windowEvents(out), ...pieceEvents(out), ...keyDateEvents(out)], now);
}

/** What stands under every event. */
function under({ plan, named, document }: PlanOut): string {
  return [
    `Document: ${document}.`,
    `Plan of work: ${planNameText(named, plan.zone)}.`,
    ...cautions,
  ].join('\n');
}

function windowEvents(out: PlanOut): CalendarEvent[] {
  const at = clockOf(out.plan);
  return out.plan.windows.flatMap((window): CalendarEvent[] => {
    const own = out.allocation.placements
      .filter((one) => one.window === window.id)
      .toSorted(byTime);
    if (own.length === 0) return [];
    const lines = own.map(
      (one) => `${pieceText(one)}: ${at(one.from, window.id)} to ${at(one.to, window.id)}`,
    );
    return [
      {
        uid: uidOf(out, 'window', window.id),
        start: window.start,
        end: window.end,
        summary: `${window.id}: ${workText(own)}`,
        description: [`Window ${window.status}.`, ...lines, under(out)].join('\n'),
      },
    ];
  });
}

function pieceEvents(out: PlanOut): CalendarEvent[] {
  const { plan, allocation } = out;
  const activities = new Map(plan.activities.map((one) => [one.id, one]));
  const visits = new Map<string, number>();
  return allocation.placements.toSorted(byTime).map((one) => {
    const visit = (visits.get(one.activity) ?? 0) + 1;
    visits.set(one.activity, visit);
    const activity = activities.get(one.activity);
    const where = one.window ?? 'outside any window';
    return {
      uid: uidOf(out, 'work', one.activity, String(visit)),
      start: one.from,
      // Work of no minutes is a moment.
      ...(one.to > one.from && { end: one.to }),
      summary: `${pieceText(one)} in ${where}`,
      description: [`${activity?.package ?? ''} ${activity?.title ?? ''}`.trim(), under(out)]
        .filter((line) => line !== '')
        .join('\n'),
    };
  });
}

function keyDateEvents(out: PlanOut): CalendarEvent[] {
  const { plan, allocation } = out;
  return allocation.keyDates.map((one) => {
    const forecast =
      one.forecast === null
        ? 'Not all of it is placed.'
        : `Forecast ${minuteText(one.forecast, plan.zone)} (${plan.zone}), ${one.met ? 'met' : 'missed'}.`;
    const float = one.floatMinutes === null ? '' : `Float ${durationText(one.floatMinutes)}.`;
    return {
      uid: uidOf(out, 'key date', one.package, String(one.due)),
      start: one.due,
      summary: `Key date of ${one.package}: ${one.met ? 'met' : 'missed'} as planned`,
      description: [`${forecast} ${float}`.trim(), under(out)].join('\n'),
    };
  });
}

function uidOf({ document }: PlanOut, ...parts: readonly string[]): string {
  const whole = [document, ...parts].map((one) =>
    encodeURIComponent(one.replace(/\p{Surrogate}/gu, '\uFFFD')),
  );
  return `${whole.join('/')}@possession-fit`;
}
