import { isZone, minuteOfClock } from '../../src/calendar/index.js';
import type { RulesStrings } from './strings.js';

/** What was made of a typed text: a value, or what is wrong and how to mend it. */
export type Read<T> = { readonly value: T } | { readonly trouble: string };

type Wrong = RulesStrings['wrong'];

const MOST = 100_000;

/** Whole minutes as `45`, `45 min`, `1:15`, `1 h` or `1 h 15`. */
export function readMinutes(text: string, wrong: Wrong): Read<number> {
  const plain = /^(\d{1,9})\s*(?:min|m)?$/i.exec(text.trim());
  const hours = /^(\d{1,5})\s*(?:h|:)\s*(?:([0-5]?\d)\s*(?:min|m)?)?$/i.exec(text.trim());
  const value = plain
    ? Number(plain[1])
    : hours
      ? Number(hours[1]) * 60 + Number(hours[2] ?? 0)
      : undefined;
  if (value === undefined) return { trouble: wrong.minutes };
  return value > MOST ? { trouble: wrong.tooMany } : { value };
}

/** As `readMinutes`; an empty text is no figure. */
export function readMinutesOrNone(text: string, wrong: Wrong): Read<number | undefined> {
  return text.trim() === '' ? { value: undefined } : readMinutes(text, wrong);
}

/** A time of day as `23:30`, `7:05`, `0730`; from 00:00 to 24:00. */
export function readClock(text: string, wrong: Wrong): Read<string> {
  const found = /^(\d{1,2}):?(\d{2})$/.exec(text.trim());
  const clock = found ? `${(found[1] ?? '').padStart(2, '0')}:${found[2]}` : '';
  const minute = clock === '' ? NaN : minuteOfClock(clock);
  return minute <= 1440 && Number(found?.[2]) < 60 ? { value: clock } : { trouble: wrong.clock };
}

export function readName(text: string, wrong: Wrong): Read<string> {
  const value = text.trim();
  return value === '' ? { trouble: wrong.empty } : { value };
}

/** An IANA zone, or none. */
export function readZone(text: string, wrong: Wrong): Read<string | undefined> {
  const value = text.trim();
  if (value === '') return { value: undefined };
  return isZone(value) ? { value } : { trouble: wrong.zone };
}

export function readText(text: string): Read<string | undefined> {
  const value = text.trim();
  return { value: value === '' ? undefined : value };
}
