import { Temporal } from 'temporal-polyfill';
import { MINUTE, type LocalTime } from '../../src/calendar/index.js';

/** A wall-clock time to be turned into an instant. */
export interface Asked extends LocalTime {
  readonly zone: string;
}

/** Half an hour and a whole one, north and south, changes at different hours of the day and none at all. */
const zones = [
  'Europe/London',
  'Europe/Berlin',
  'America/New_York',
  'America/St_Johns',
  'Australia/Sydney',
  'Australia/Lord_Howe',
  'Asia/Kolkata',
  'UTC',
] as const;

const FROM = Date.UTC(2015, 0, 1);
const TO = Date.UTC(2036, 0, 1);

/**
 * So many local times over 21 years in eight zones. Every eighth lies within three hours of a change of the clocks, so
 * that hours shown twice and never are among them. Always the same ones, found without our own conversion: none of
 * what it keeps is there before it is timed.
 */
export function localTimes(count: number): readonly Asked[] {
  const changes = zones.map(wallTimesOfChanges);
  let word = 1;
  const below = (most: number): number => {
    word = (Math.imul(word, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((word / 2 ** 32) * most);
  };
  return Array.from({ length: count }, (_, at) => {
    const place = at % zones.length;
    const near = changes[place]!;
    const shown =
      at % 64 < zones.length && near.length > 0
        ? near[below(near.length)]! + (below(360) - 180) * MINUTE
        : FROM + below((TO - FROM) / MINUTE) * MINUTE;
    return { zone: zones[place]!, ...shownAt(shown) };
  });
}

/** What the clocks of a zone show at each of its changes, as if that were UTC. */
function wallTimesOfChanges(zone: string): number[] {
  const found: number[] = [];
  let at = Temporal.Instant.fromEpochMilliseconds(FROM)
    .toZonedDateTimeISO(zone)
    .getTimeZoneTransition('next');
  while (at && at.epochMilliseconds < TO) {
    found.push(at.epochMilliseconds + at.offsetNanoseconds / 1e6);
    at = at.getTimeZoneTransition('next');
  }
  return found;
}

function shownAt(utc: number): LocalTime {
  const date = new Date(utc);
  return {
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    hour: date.getUTCHours(),
    minute: date.getUTCMinutes(),
  };
}
