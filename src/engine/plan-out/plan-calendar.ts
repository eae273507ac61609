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
      .filter((placement) => placement.window === window.id)
      .toSorted(byTime);
    if (own.length === 0) return [];
    const lines = own.map(
      (placement) =>
        `${pieceText(placement)}: ${at(placement.from, window.id)} to ${at(placement.to, window.id)}`,
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
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const visits = new Map<string, number>();
  return allocation.placements.toSorted(byTime).map((placement) => {
    const visit = (visits.get(placement.activity) ?? 0) + 1;
    visits.set(placement.activity, visit);
    const activity = activities.get(placement.activity);
    const where = placement.window ?? 'outside any window';
    return {
      uid: uidOf(out, 'work', placement.activity, String(visit)),
      start: placement.from,
      // Work of no minutes is a moment.
      ...(placement.to > placement.from && { end: placement.to }),
      summary: `${pieceText(placement)} in ${where}`,
      description: [`${activity?.package ?? ''} ${activity?.title ?? ''}`.trim(), under(out)]
        .filter((line) => line !== '')
        .join('\n'),
    };
  });
}

function keyDateEvents(out: PlanOut): CalendarEvent[] {
  const { plan, allocation } = out;
  return allocation.keyDates.map((date) => {
    const forecast =
      date.forecast === null
        ? 'Not all of it is placed.'
        : `Forecast ${minuteText(date.forecast, plan.zone)} (${plan.zone}), ${date.met ? 'met' : 'missed'}.`;
    const float = date.floatMinutes === null ? '' : `Float ${durationText(date.floatMinutes)}.`;
    return {
      uid: uidOf(out, 'key date', date.package, String(date.due)),
      start: date.due,
      summary: `Key date of ${date.package}: ${date.met ? 'met' : 'missed'} as planned`,
      description: [`${forecast} ${float}`.trim(), under(out)].join('\n'),
    };
  });
}

function uidOf({ document }: PlanOut, ...parts: readonly string[]): string {
  const whole = [document, ...parts].map((text) =>
    encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD')),
  );
  return `${whole.join('/')}@possession-fit`;
}
