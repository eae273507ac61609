import type { Instant } from '../../calendar/index.js';
import { byTime, cautions, phrasesOf, type SayPhrase } from '../../model/index.js';
import { calendarFile, type CalendarEvent } from '../../tables/write/calendar-file.js';
import { planNamed } from '../report/plan-named.js';
import { cautionsSaid } from '../report/say.js';
import type { planCalendarSentences } from './english/plan-calendar-sentences.js';
import { pieceText, workText, type PlanOut } from './plan-sheets.js';

const sentence = phrasesOf<typeof planCalendarSentences>();

/**
 * A plan of work as an iCalendar file (RFC 5545), stamped `now`: an event for each window with work in it, for each piece
 * of work and for each key date. Names hang on document, window, activity and the count of its visits, so a later file
 * moves an entry and does not double it.
 */
export function planCalendar(out: PlanOut, now: Instant, say: SayPhrase): string {
  const warned = cautionsSaid(cautions).map(say);
  const plan = planNamed(out.named, out.plan.zone);
  const under = [
    say(sentence('plan-calendar-under', { document: out.document, plan })),
    ...warned,
  ].join('\n');
  const events = [
    ...windowEvents(out, say, under),
    ...pieceEvents(out, say, under),
    ...keyDateEvents(out, say, under),
  ];
  return calendarFile(events, now, undefined, warned);
}

function windowEvents(out: PlanOut, say: SayPhrase, under: string): CalendarEvent[] {
  return out.plan.windows.flatMap((window): CalendarEvent[] => {
    const { id, start, end, status, zone } = window;
    const own = out.allocation.placements
      .filter((placement) => placement.window === id)
      .toSorted(byTime);
    if (own.length === 0) return [];
    const pieces = own.map((placement) =>
      sentence('plan-calendar-piece', {
        piece: pieceText(placement),
        start: { at: placement.from, zone },
        end: { at: placement.to, zone },
      }),
    );
    return [
      {
        uid: uidOf(out, 'window', id),
        start,
        end,
        summary: `${id}: ${workText(own)}`,
        description: [
          ...[sentence('plan-calendar-window', { status }), ...pieces].map(say),
          under,
        ].join('\n'),
      },
    ];
  });
}

function pieceEvents(out: PlanOut, say: SayPhrase, under: string): CalendarEvent[] {
  const { plan, allocation } = out;
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const visits = new Map<string, number>();
  return allocation.placements.toSorted(byTime).map((placement) => {
    const { activity: id, window, from, to } = placement;
    const visit = (visits.get(id) ?? 0) + 1;
    visits.set(id, visit);
    const activity = activities.get(id);
    return {
      uid: uidOf(out, 'work', id, String(visit)),
      start: from,
      // Work of no minutes is a moment.
      ...(to > from && { end: to }),
      summary: say(sentence('plan-calendar-piece-in', { piece: pieceText(placement), window })),
      description: [`${activity?.package ?? ''} ${activity?.title ?? ''}`.trim(), under]
        .filter((line) => line !== '')
        .join('\n'),
    };
  });
}

function keyDateEvents(out: PlanOut, say: SayPhrase, under: string): CalendarEvent[] {
  const { zone } = out.plan;
  return out.allocation.keyDates.map((date) => {
    const { due, forecast, met, floatMinutes, floatAtLeast } = date;
    const how = sentence('plan-calendar-forecast', {
      forecast: forecast === null ? null : { at: forecast, zone },
      met,
      float:
        floatMinutes === null ? null : { minutes: floatMinutes, atLeast: floatAtLeast === true },
    });
    return {
      uid: uidOf(out, 'key date', date.package, String(due)),
      start: due,
      summary: say(sentence('plan-calendar-key-date', { package: date.package, met })),
      description: [say(how), under].join('\n'),
    };
  });
}

function uidOf({ document }: PlanOut, ...parts: readonly string[]): string {
  const whole = [document, ...parts].map((text) =>
    encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD')),
  );
  return `${whole.join('/')}@possession-fit`;
}
