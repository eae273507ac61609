import type { Instant } from '../../calendar/index.js';
import { cautions, phrasesOf, type AccessWindow, type SayPhrase } from '../../model/index.js';
import type { HandbackResult } from '../../risk/index.js';
import { calendarFile, type CalendarEvent } from '../../tables/write/calendar-file.js';
import { cautionsSaid } from '../report/say.js';
import type { calendarSentences } from './english/calendar-sentences.js';

const sentence = phrasesOf<typeof calendarSentences>();

/** As `cutOffCalendar`, in the words of whoever saves it. */
export function cutOffCalendarIn(
  say: SayPhrase,
  results: readonly HandbackResult[],
  windows: readonly AccessWindow[],
  now: Instant,
  about?: string,
): string {
  const warned = cautionsSaid(cautions).map(say);
  const events = results.flatMap((result) => {
    const zone = windows.find((window) => window.id === result.window)?.zone ?? 'UTC';
    return windowEvents(result, zone, warned.join(' '), say);
  });
  return calendarFile(events, now, about, warned);
}

function windowEvents(
  result: HandbackResult,
  zone: string,
  warned: string,
  say: SayPhrase,
): CalendarEvent[] {
  const { window, bookedEnd, requiredMinutes, cutOffs, decisions, goPoints } = result;
  const { verdict, status, marginMinutes, chanceWanted, simulation, confidence } = result;
  const uid = (...parts: readonly string[]): string =>
    `${[window, ...parts].map(encodeURIComponent).join('.')}@possession-fit`;
  const titleOf = (activity: string): string =>
    cutOffs.find((cutOff) => cutOff.activity === activity)?.name ?? activity;
  const moment = (at: Instant) => ({ at, zone });
  const stands = sentence('calendar-verdict', {
    verdict,
    status,
    marginMinutes,
    requiredMinutes,
    chanceWanted,
    onTime: simulation.outlook.onTime.probability,
    runs: simulation.runs,
  });
  const end = [
    [sentence('calendar-booked-end', { end: moment(bookedEnd) }), stands].map(say).join(' '),
    warned,
  ].join('\n');
  const event = (
    id: string,
    start: Instant,
    summary: ReturnType<typeof sentence>,
    what: ReturnType<typeof sentence>,
  ): CalendarEvent => ({
    uid: id,
    start,
    summary: say(summary),
    description: `${say(what)} ${end}`,
  });
  const begun = new Set(
    cutOffs.flatMap((cutOff) => (cutOff.state === 'to-come' ? [] : (cutOff.activity ?? []))),
  );
  return [
    ...cutOffs
      .filter((cutOff) => cutOff.state === 'to-come')
      .map((cutOff) =>
        event(
          uid(cutOff.kind, cutOff.activity ?? cutOff.name),
          cutOff.latestStart,
          sentence('calendar-cut-off', { window, name: cutOff.name }),
          sentence('calendar-latest-start', {
            requiredMinutes,
            onTimeBy: moment(cutOff.onTimeStart),
            surelyBy: cutOff.chanceStart === null ? null : moment(cutOff.chanceStart),
            confidence,
            planned: moment(cutOff.plannedStart),
          }),
        ),
      ),
    ...decisions.flatMap(({ activity, pointOfNoReturn, latestAbort }) => {
      const named = { window, name: titleOf(activity) };
      return [
        ...(pointOfNoReturn === null || begun.has(activity)
          ? []
          : [
              event(
                uid('no-return', activity),
                pointOfNoReturn,
                sentence('calendar-no-return', named),
                sentence('calendar-do-not-begin'),
              ),
            ]),
        ...(latestAbort === null
          ? []
          : [
              event(
                uid('latest-abandonment', activity),
                latestAbort,
                sentence('calendar-abandonment', named),
                sentence('calendar-no-room'),
              ),
            ]),
      ];
    }),
    ...goPoints.map(({ id, at, name, holder }) =>
      event(
        uid('go', id),
        at,
        sentence('calendar-go', { window, name }),
        sentence('calendar-holder', { holder }),
      ),
    ),
    event(
      uid('booked-end'),
      bookedEnd,
      sentence('calendar-end', { window }),
      sentence('calendar-handed-back'),
    ),
  ];
}
