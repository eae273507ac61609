// iCalendar as RFC 5545 has it: content lines end in CRLF and hold at most 75 octets, and a longer one is folded
// between characters, never inside one. Times are UTC, so no VTIMEZONE is needed and no reader can disagree.
import type { Instant } from '../../calendar/index.js';
import { cautions } from '../../model/index.js';

export interface CalendarEvent {
  /** Stable: the same event in a later file has the same uid and moves the entry. */
  readonly uid: string;
  readonly start: Instant;
  /** Absent: a moment with no length. */
  readonly end?: Instant;
  readonly summary: string;
  readonly description: string;
  /** Count of changes, 0 for the first. */
  readonly sequence?: number;
  readonly cancelled?: boolean;
}

/**
 * An iCalendar file of events, one VEVENT each, in the order given.
 *
 * `stamp` is the moment of writing. Seconds are kept, milliseconds are not. `about`, such as the plan that the times come from,
 * stands first under the file and under every event; `warned`: the cautions in the language of the file.
 * @throws {RangeError} When a uid is empty or used twice, a time is no moment, an end is not after its start, or a
 * sequence is no whole number from 0.
 * @see RFC 5545, sections 3.1 (folding), 3.3.11 (text), 3.6.1 (events).
 */
export function calendarFile(
  events: readonly CalendarEvent[],
  stamp: Instant,
  about?: string,
  warned: readonly string[] = cautions,
): string {
  const seen = new Set<string>();
  for (const event of events) {
    if (event.uid === '' || seen.has(event.uid))
      throw new RangeError(`uid "${event.uid}" is not unique`);
    seen.add(event.uid);
  }
  const said = about === undefined ? [] : [about];
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//possession-fit//possession-fit 1//EN',
    'CALSCALE:GREGORIAN',
    `DESCRIPTION:${textOf([...said, ...warned].join('\n'))}`,
    ...events.flatMap((event) =>
      eventLines({ ...event, description: [...said, event.description].join('\n') }, stamp),
    ),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(event: CalendarEvent, stamp: Instant): string[] {
  const { uid, start, end, summary, description, sequence = 0, cancelled = false } = event;
  if (end !== undefined && !(end > start))
    throw new RangeError(`event "${uid}" ends at or before its start`);
  if (!Number.isInteger(sequence) || sequence < 0)
    throw new RangeError(`event "${uid}" has sequence ${sequence}`);
  return [
    'BEGIN:VEVENT',
    `UID:${textOf(uid)}`,
    `DTSTAMP:${utcOf(stamp)}`,
    `DTSTART:${utcOf(start)}`,
    ...(end === undefined ? [] : [`DTEND:${utcOf(end)}`]),
    `SEQUENCE:${sequence}`,
    `SUMMARY:${textOf(summary)}`,
    `DESCRIPTION:${textOf(description)}`,
    `STATUS:${cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    // A date to be kept does not fill the diary.
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** `20270403T210000Z`. */
function utcOf(at: Instant): string {
  if (!Number.isFinite(at)) throw new RangeError(`${at} is no moment`);
  return `${new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
}

/** A value of type TEXT. Control characters, which the format forbids, are left out; every line break becomes `\n`. */
function textOf(value: string): string {
  return value
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\n/g, '\\n');
}

const octetsOf = (codePoint: number): number =>
  codePoint < 0x80 ? 1 : codePoint < 0x800 ? 2 : codePoint < 0x10000 ? 3 : 4;

/** A content line as lines of at most 75 octets, each but the first begun with a space, which counts. */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0)!);
    if (octets + size > 75) {
      out += '\r\n ';
      octets = 1;
    }
    out += character;
    octets += size;
  }
  return out;
}
