import {
  dateOf,
  dayFromText,
  isLocalTime,
  readings,
  type Instant,
} from '../../src/calendar/index.js';
import { shareOfPercent } from '../../src/engine/index.js';
import type { AccountStrings } from './strings.js';

/** The value of a text, or what is wrong with it. */
export type Entered<T> = { readonly value: T } | { readonly problem: string };

/** A week: a later handback or train belongs to another event. */
const MOST_MINUTES = 10_080;

const withinLimit = (minutes: number, problem: string): Entered<number> =>
  Number.isInteger(minutes) && minutes <= MOST_MINUTES ? { value: minutes } : { problem };

/** Whole minutes: `14`, or `1:20` for an hour and twenty. */
export function readMinutes(text: string, words: AccountStrings): Entered<number> {
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(text.trim());
  if (clock) return withinLimit(Number(clock[1]) * 60 + Number(clock[2]), words.badMinutes);
  return /^\d{1,5}$/.test(text.trim())
    ? withinLimit(Number(text), words.badMinutes)
    : { problem: words.badMinutes };
}

/** Hours as whole minutes: `2.5`, or `2:30`. */
export function readHours(text: string, words: AccountStrings): Entered<number> {
  const plain = text.trim().replace(',', '.');
  if (plain.includes(':')) return readMinutes(plain, { ...words, badMinutes: words.badHours });
  return /^\d{1,3}(\.\d{1,4})?$/.test(plain)
    ? withinLimit(Math.round(Number(plain) * 60), words.badHours)
    : { problem: words.badHours };
}

/** An amount as on an invoice; thousands may be separated by a comma or a space. */
export function readSum(text: string, words: AccountStrings): Entered<string> {
  const plain = text.trim().replace(/(?<=\d)[ ,](?=\d{3}(\D|$))/g, '');
  return /^\d{1,12}(\.\d{1,4})?$/.test(plain) ? { value: plain } : { problem: words.badSum };
}

/** Our share of a cost, typed as a percentage, as exact decimal text; empty: all of it. */
export function readShare(text: string, words: AccountStrings): Entered<string> {
  const share = text.trim() === '' ? '1' : shareOfPercent(text);
  return share === undefined ? { problem: words.badShare } : { value: share };
}

/** The moment of a local date and time; if it occurs twice, the one chosen. */
export function readMoment(
  date: string,
  clock: string,
  second: boolean,
  zone: string,
  words: AccountStrings,
): Entered<Instant> & { readonly twice?: boolean } {
  const day = dayFromText(date);
  if (day === undefined) return { problem: words.badDate };
  const parts = /^([01]?\d|2[0-3])[:.]?([0-5]\d)$/.exec(clock.trim());
  if (!parts) return { problem: words.badClock };
  const local = { ...dateOf(day), hour: Number(parts[1]), minute: Number(parts[2]) };
  if (!isLocalTime(local)) return { problem: words.badDate };
  const read = readings(local, zone);
  if (read.kind === 'none') return { problem: words.skipped };
  if (read.kind === 'one') return { value: read.at };
  return { value: second ? read.later : read.earlier, twice: true };
}
