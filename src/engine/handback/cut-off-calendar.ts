import { durationText, isoText, type Instant } from '../../calendar/index.js';
import { cautions, type AccessWindow } from '../../model/index.js';
import { chanceText, type HandbackResult } from '../../risk/index.js';
import { calendarFile, type CalendarEvent } from '../../tables/write/calendar-file.js';

/**
 * Cut-offs, points of no return, latest abandonments, go/no-go points and booked ends as an iCalendar file (RFC 5545),
 * stamped `now`. What has begun has no cut-off any more. The same cut-off in a later file has the same uid and moves the
 * entry.
 *
 * @param about The plan of work that the times come from, in words: it stands under every entry.
 */
export function cutOffCalendar(
  results: readonly HandbackResult[],
  windows: readonly AccessWindow[],
  now: Instant,
  about?: string,
): string {
  const events = results.flatMap((result) => {
    const zone = windows.find((window) => window.id === result.window)?.zone ?? 'UTC';
    return windowEvents(result, (at) => isoText(at, zone).replace('T', ' '));
  });
  return calendarFile(events, now, about);
}

/** The one verdict of the window with its two parts. */
function verdictText(result: HandbackResult, chance: string): string {
  const { verdict, status, marginMinutes, requiredMinutes, chanceWanted, simulation } = result;
  const word = {
    held: 'Held',
    'chance-low': 'Chance low',
    eaten: 'Eaten into',
    overrun: 'Overrun',
  };
  const wanted =
    chanceWanted === null ? 'none is set as wanted' : `wanted ${chanceText(chanceWanted)}`;
  return `${word[verdict]}: margin ${durationText(marginMinutes)} of ${durationText(requiredMinutes)}, ${chance} on time in ${simulation.runs} simulated runs (${wanted}). Window ${status}.`;
}

function windowEvents(result: HandbackResult, textOf: (at: Instant) => string): CalendarEvent[] {
  const { window, bookedEnd, requiredMinutes, cutOffs, decisions, goPoints } = result;
  const uid = (...parts: readonly string[]): string =>
    `${[window, ...parts].map(encodeURIComponent).join('.')}@possession-fit`;
  const titleOf = (activity: string): string =>
    cutOffs.find((cutOff) => cutOff.activity === activity)?.name ?? activity;
  const { onTime } = result.simulation.outlook;
  const end = `Booked end ${textOf(bookedEnd)}. ${verdictText(result, chanceText(onTime.probability))}\n${cautions.join(' ')}`;
  const begun = new Set(
    cutOffs.flatMap((cutOff) => (cutOff.state === 'to-come' ? [] : (cutOff.activity ?? []))),
  );
  return [
    ...cutOffs
      .filter((cutOff) => cutOff.state === 'to-come')
      .map((cutOff) => ({
        uid: uid(cutOff.kind, cutOff.activity ?? cutOff.name),
        start: cutOff.latestStart,
        summary: `${window}: ${cutOff.name} must have started`,
        description: `Latest start that keeps the required margin of ${durationText(requiredMinutes)}. Still on time if started by ${textOf(cutOff.onTimeStart)}.${cutOff.chanceStart === null ? '' : ` With ${chanceText(result.confidence)} on time if started by ${textOf(cutOff.chanceStart)}.`} Planned start ${textOf(cutOff.plannedStart)}. ${end}`,
      })),
    ...decisions.flatMap(({ activity, pointOfNoReturn, latestAbort }) => [
      ...(pointOfNoReturn === null || begun.has(activity)
        ? []
        : [
            {
              uid: uid('no-return', activity),
              start: pointOfNoReturn,
              summary: `${window}: point of no return, ${titleOf(activity)}`,
              description: `Not begun by then, do not begin: it cannot be undone. ${end}`,
            },
          ]),
      ...(latestAbort === null
        ? []
        : [
            {
              uid: uid('latest-abandonment', activity),
              start: latestAbort,
              summary: `${window}: latest abandonment, ${titleOf(activity)}`,
              description: `Abandoned later, there is no room to put the line back, lead out and keep the margin. ${end}`,
            },
          ]),
    ]),
    ...goPoints.map((point) => ({
      uid: uid('go', point.id),
      start: point.at,
      summary: `${window}: go or no go, ${point.name}`,
      description: `${point.holder === '' ? 'Nobody is named to decide.' : `${point.holder} decides.`} ${end}`,
    })),
    {
      uid: uid('booked-end'),
      start: bookedEnd,
      summary: `${window}: booked end`,
      description: `The possession must have been handed back. ${end}`,
    },
  ];
}
