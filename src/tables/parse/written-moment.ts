import { isLocalTime } from '../../calendar/index.js';
import { dayOfWeek, monthOf } from './calendar-words.js';
import { parseClock, type ClockTime } from './clock.js';
import { plain, refuse, type Parsed, problemOf } from './parsed.js';
import type { Problem } from '../../model/index.js';

/** Which number of `03/04/2027` is the day. */
export type DateOrder = 'day-first' | 'month-first';

export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** A date, a time, or both, as a cell writes them; not yet a moment, as no zone has been asked. */
export interface WrittenMoment {
  readonly date?: CalendarDay;
  readonly time?: ClockTime;
  /** Minutes ahead of UTC, where the cell says so. */
  readonly offset?: number;
  /** From a serial number: such numbers write midnight as a date alone. */
  readonly serial?: true;
}
/** A word before a date, which may name a day of the week in English, German or French. */
const wordBefore = /^(\p{L}{2,10})\.?,? (?:den |le )?/iu;
const isoDate = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?![\d])/;
const numericDate = /^(\d{1,2})([-/. ])(\d{1,2})\2(\d{4})(?!\d)/;
const namedDate = /^(\d{1,2})(?:st|nd|rd|th|er|\.)?([-/. ]?)(\p{L}{3,9})\.?\2,? ?(\d{4})(?!\d)/iu;
const shortYear = /^\d{1,2}([-/. ])(?:\d{1,2}|\p{L}{3,9})\1\d{2}(?!\d)/iu;
const offsetAtEnd = /(?:(Z|UTC|GMT)|([+-])(\d{2}):?(\d{2})?)$/i;
const usual = /^(\d{4})-(\d\d)-(\d\d) (\d\d):(\d\d)$/;
const serialNumber = /^\d{5}(?:[.,]\d{1,20})?$/;

/**
 * Reads a date and time (`2027-03-28 01:00`, `28/03/2027 01:00`, `28-Mar-2027 01:00+01:00`), a date alone, a time
 * alone (`05:30`), or a spreadsheet's serial number of days since the end of 1899.
 */
export function parseMoment(text: string, order: DateOrder): Parsed<WrittenMoment> {
  return parseUsual(text) ?? parseAny(text, order);
}

/** The form of most cells, in one look; undefined where there is anything to say of it. */
function parseUsual(text: string): Parsed<WrittenMoment> | undefined {
  const found = usual.exec(text);
  if (!found) return undefined;
  const date = { year: Number(found[1]), month: Number(found[2]), day: Number(found[3]) };
  const time = { hour: Number(found[4]), minute: Number(found[5]) };
  if (yearFault(text, date.year) || !isLocalTime({ ...date, ...time })) return undefined;
  return { value: { date, time } };
}

function parseAny(text: string, order: DateOrder): Parsed<WrittenMoment> {
  const tidy = plain(text);
  if (serialNumber.test(tidy)) return parseSerial(text, Number(tidy.replace(',', '.')));
  const clock = parseClock(tidy);
  if (clock) return 'problem' in clock ? clock : { value: { time: clock.value } };
  const { weekday, body } = withoutWeekday(tidy);
  const found = parseDay(text, body, order);
  if ('problem' in found) return found;
  const { date, rest } = found.value;
  const year = yearFault(text, date.year);
  if (year) return { problem: year };
  if (!isLocalTime({ ...date, hour: 0, minute: 0 })) {
    return refuse('no-such-date', { text });
  }
  const wrong = weekday === undefined ? undefined : weekdayFault(text, weekday, date);
  if (wrong) return { problem: wrong };
  return parseRest(text, date, rest);
}

/** The text after the name of a day of the week, and that name; a word that names none stays where it is. */
function withoutWeekday(text: string): { weekday?: string; body: string } {
  const word = wordBefore.exec(text);
  if (!word || dayOfWeek(word[1]!) === undefined) return { body: text };
  return { weekday: word[1]!, body: text.slice(word[0].length) };
}

const firstYear = 1990;
const lastYear = 2199;

/** A year of two digits with zeros before it, or one that no possession of today falls in. */
function yearFault(text: string, year: number): Problem | undefined {
  if (year < 100) return problemOf('two-digit-year', { text, year });
  if (year >= firstYear && year <= lastYear) return undefined;
  return problemOf('year-not-likely', { text, year, firstYear, lastYear });
}

/** In no order but the usual one: nothing would be taken off before the year. */
const startsWithYear = /^\d{4}/;

/** The two numbers of a date that could be read day first or month first; none where the order is plain. */
export function doubtfulNumbers(
  text: string,
): readonly [first: number, second: number] | undefined {
  if (text === '' || startsWithYear.test(text)) return undefined;
  const found = numericDate.exec(withoutWeekday(plain(text)).body);
  return found ? [Number(found[1]), Number(found[3])] : undefined;
}

function parseDay(
  text: string,
  body: string,
  order: DateOrder,
): Parsed<{ date: CalendarDay; rest: string }> {
  const iso = isoDate.exec(body);
  if (iso) return day(iso, Number(iso[1]), Number(iso[3]), Number(iso[4]), body);
  const numeric = numericDate.exec(body);
  if (numeric) {
    const [first, second] = [Number(numeric[1]), Number(numeric[3])];
    const year = Number(numeric[4]);
    return order === 'day-first'
      ? day(numeric, year, second, first, body)
      : day(numeric, year, first, second, body);
  }
  const words = namedDate.exec(body);
  const month = words ? monthOf(words[3]!) : 0;
  if (words && month > 0) return day(words, Number(words[4]), month, Number(words[1]), body);
  if (shortYear.test(body)) {
    return refuse('two-digit-year/short', { text });
  }
  return refuse('date-not-read', { text });
}

function day(
  found: RegExpExecArray,
  year: number,
  month: number,
  dayOfMonth: number,
  body: string,
): Parsed<{ date: CalendarDay; rest: string }> {
  return { value: { date: { year, month, day: dayOfMonth }, rest: body.slice(found[0].length) } };
}

function parseRest(text: string, date: CalendarDay, rest: string): Parsed<WrittenMoment> {
  if (rest === '') return { value: { date } };
  const separated = /^(?:T|,? (?:um |à |at )?)/i.exec(rest);
  if (!separated) return refuse('date-not-read/time', { text });
  const bare = rest.slice(separated[0].length);
  const zoned = offsetAtEnd.exec(bare);
  const clock = parseClock((zoned ? bare.slice(0, zoned.index) : bare).trim());
  if (!clock) return refuse('date-not-read/time', { text });
  if ('problem' in clock) return clock;
  if (!zoned) return { value: { date, time: clock.value } };
  const size = Number(zoned[3] ?? 0) * 60 + Number(zoned[4] ?? 0);
  if (size > 14 * 60 || Number(zoned[4] ?? 0) > 59) {
    return refuse('offset-not-read', { offset: zoned[0] });
  }
  return { value: { date, time: clock.value, offset: zoned[2] === '-' ? -size : size } };
}

function weekdayFault(text: string, word: string, date: CalendarDay): Problem | undefined {
  const actual = new Date(Date.UTC(date.year, date.month - 1, date.day)).getUTCDay();
  if (dayOfWeek(word) === actual) return undefined;
  return problemOf('weekday-disagrees', { text, actual });
}

const secondsADay = 86_400;
/** 1 January 2000 and 31 December 2100. */
const firstSerial = 36_526;
const lastSerial = 73_415;

/** Day 1 is 1 January 1900 and a day that never was, 29 February 1900, is counted: day 36526 is 1 January 2000. */
function parseSerial(text: string, serial: number): Parsed<WrittenMoment> {
  if (serial < firstSerial || serial >= lastSerial + 1) return refuse('date-not-read', { text });
  // Rounded to the second first: a serial number holds no more than about a tenth of one.
  const seconds = Math.round((serial - firstSerial) * secondsADay);
  if (seconds % 60 !== 0) {
    return refuse('not-on-a-minute/serial', { text });
  }
  const at = new Date(Date.UTC(2000, 0, 1) + seconds * 1000);
  const date = { year: at.getUTCFullYear(), month: at.getUTCMonth() + 1, day: at.getUTCDate() };
  const time = { hour: at.getUTCHours(), minute: at.getUTCMinutes() };
  return {
    value: Number.isInteger(serial) ? { date, serial: true } : { date, time, serial: true },
  };
}
