import fc from 'fast-check';
import ICAL from 'ical.js';
import * as nodeIcal from 'node-ical';
import { describe, expect, it } from 'vitest';
import { calendarFile, type CalendarEvent } from '../../../src/tables/write/calendar-file.js';

const stamp = Date.UTC(2027, 0, 5, 9, 30);
const start = Date.UTC(2027, 3, 3, 21);
const event = (more: Partial<CalendarEvent> = {}): CalendarEvent => ({
  uid: 'plan/W1/bid@possession-fit',
  start,
  summary: 'Bid',
  description: 'Due',
  ...more,
});
const octets = (text: string) => new TextEncoder().encode(text);
const lines = (file: string) => file.split('\r\n').slice(0, -1);

/** Events as each of two independent readers sees them. */
function readBack(file: string) {
  const one = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map((part) => {
    const read = new ICAL.Event(part);
    return {
      uid: read.uid,
      summary: read.summary,
      description: read.description,
      start: read.startDate.toJSDate().getTime(),
      sequence: read.sequence,
      status: part.getFirstPropertyValue('status'),
    };
  });
  const other = Object.values(nodeIcal.sync.parseICS(file)).flatMap((part) =>
    part?.type === 'VEVENT'
      ? [
          {
            uid: part.uid,
            summary: part.summary,
            description: part.description,
            start: part.start.getTime(),
            sequence: Number(part.sequence),
            status: part.status,
          },
        ]
      : [],
  );
  return { one, other };
}

describe('a calendar file', () => {
  it('ends every line in CR LF and has neither alone', () => {
    const file = calendarFile([event({ description: 'one\ntwo\r\nthree\rfour' })], stamp);
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(file).toContain('DESCRIPTION:one\\ntwo\\nthree\\nfour\r\n');
  });
  it('names its version and product and stamps every event in UTC', () => {
    const file = calendarFile([event({ end: start + 3_600_000, sequence: 2 })], stamp);
    expect(lines(file).slice(0, 3)).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//possession-fit//possession-fit 1//EN',
    ]);
    for (const line of [
      'DTSTAMP:20270105T093000Z',
      'DTSTART:20270403T210000Z',
      'DTEND:20270403T220000Z',
      'SEQUENCE:2',
    ])
      expect(lines(file)).toContain(line);
  });
  it('escapes backslash, semicolon and comma and leaves the colon alone', () => {
    expect(lines(calendarFile([event({ summary: 'a\\b;c,d:e' })], stamp))).toContain(
      'SUMMARY:a\\\\b\\;c\\,d:e',
    );
  });
  it('folds at 75 octets to the octet', () => {
    // "SUMMARY:" is 8 octets: 67 more fill the line, one more folds.
    const of = (n: number) =>
      lines(calendarFile([event({ summary: 'x'.repeat(n) })], stamp)).filter((line) =>
        /^(SUMMARY| x)/.test(line),
      );
    expect(of(67)).toEqual([`SUMMARY:${'x'.repeat(67)}`]);
    expect(of(68)).toEqual([`SUMMARY:${'x'.repeat(67)}`, ' x']);
    expect(of(67 + 74 + 1).map((line) => line.length)).toEqual([75, 75, 2]);
  });
  it.each(['é', '漢', '🚧'])('never folds inside the octets of %s', (character) => {
    for (let shift = 0; shift < 4; shift += 1) {
      const summary = 'x'.repeat(shift) + character.repeat(60);
      const file = calendarFile([event({ summary })], stamp);
      for (const line of lines(file)) {
        expect(octets(line).length).toBeLessThanOrEqual(75);
        expect(new TextDecoder('utf-8', { fatal: true }).decode(octets(line))).toBe(line);
      }
      expect(file.replaceAll('\r\n ', '')).toContain(`SUMMARY:${summary}\r\n`);
    }
  });
  it('leaves out control characters, which the format forbids', () => {
    expect(calendarFile([event({ summary: 'a\u0000b\u0007c\u001bd' })], stamp)).toContain(
      'SUMMARY:abcd\r\n',
    );
  });
  it('says in words, once for the file, that it authorises nothing', () => {
    expect(calendarFile([], stamp).replaceAll('\r\n ', '')).toContain(
      'DESCRIPTION:A planning aid.',
    );
  });
  it('marks what is cancelled', () => {
    const file = calendarFile([event({ cancelled: true }), event({ uid: 'other' })], stamp);
    expect(lines(file).filter((line) => line.startsWith('STATUS'))).toEqual([
      'STATUS:CANCELLED',
      'STATUS:CONFIRMED',
    ]);
  });
  it.each([
    ['a uid twice', [event(), event()]],
    ['an empty uid', [event({ uid: '' })]],
    ['an end at its start', [event({ end: start })]],
    ['a start that is no moment', [event({ start: NaN })]],
    ['a sequence of a half', [event({ sequence: 0.5 })]],
  ])('refuses %s', (_, events) => {
    expect(() => calendarFile(events, stamp)).toThrow(RangeError);
  });
  it('reads back as it was written, in two independent readers', () => {
    const text = fc
      .string({
        unit: fc.constantFrom('a', 'B', ' ', ',', ';', '\\', ':', '"', 'n', 'é', '漢', '🚧', '\n'),
        maxLength: 200,
      })
      // Readers differ on blanks at the ends of a value, which no summary of ours has.
      .map((raw) => `x${raw}x`);
    fc.assert(
      fc.property(
        text,
        text,
        fc.integer({ min: 0, max: 2_000_000 }),
        fc.nat(9),
        (summary, description, minute, sequence) => {
          const at = Date.UTC(2026, 0, 1) + minute * 60_000;
          const file = calendarFile([event({ summary, description, start: at, sequence })], stamp);
          const wanted = {
            uid: 'plan/W1/bid@possession-fit',
            summary,
            description,
            start: at,
            sequence,
            status: 'CONFIRMED',
          };
          const { one, other } = readBack(file);
          expect(one).toEqual([wanted]);
          // The second reader takes an escaped backslash before a letter n for a line break, against section 3.3.11.
          if (!/\\n/i.test(summary + description)) expect(other).toEqual([wanted]);
          for (const line of lines(file)) expect(octets(line).length).toBeLessThanOrEqual(75);
        },
      ),
      { numRuns: 200 },
    );
  });
});
