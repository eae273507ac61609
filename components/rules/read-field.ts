import { isoText, isZone, localTimeOf, minuteOfClock, readings } from '../../src/calendar/index.js';
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

/** Per cent, with or without its sign, as a share of 1; an empty text is none. */
export function readPercent(text: string, wrong: Wrong): Read<number | undefined> {
  const bare = text
    .trim()
    .replace(/(?<!\s)\s*%$/, '')
    .replace(',', '.');
  if (bare === '') return { value: undefined };
  const value = /^\d{1,3}(\.\d{1,6})?$/.test(bare) ? Number(bare) : NaN;
  return value <= 100 ? { value: Number((value / 100).toFixed(8)) } : { trouble: wrong.percent };
}

interface Three {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export const threeText = ({ low, likely, high }: Three): string => `${low}; ${likely}; ${high}`;

/** Least, most likely and most as `15; 30; 60`; one figure stands for all three; an empty text is none. */
export function readThree(text: string, wrong: Wrong): Read<Three | undefined> {
  if (text.trim() === '') return { value: undefined };
  const parts = text.trim().split(/\s*;\s*|\s+/);
  const figures = parts.map((part) =>
    /^\d{1,6}([.,]\d{1,6})?$/.test(part) ? Number(part.replace(',', '.')) : NaN,
  );
  const [low = NaN, likely = low, high = likely] = figures;
  const rises = low <= likely && likely <= high && high <= MOST;
  return rises && (figures.length === 1 || figures.length === 3)
    ? { value: { low, likely, high } }
    : { trouble: wrong.three };
}

const two = (value: number): string => String(value).padStart(2, '0');

/** A moment as local date and time: `2027-03-02 23:30`. */
export function momentText(at: string, zone: string): string {
  const { year, month, day, hour, minute } = localTimeOf(Date.parse(at), zone);
  return `${year}-${two(month)}-${two(day)} ${two(hour)}:${two(minute)}`;
}

/** Local date and time, as a moment with its offset. Of one that clocks show twice the earlier: work stops sooner. */
export function readMoment(text: string, zone: string, wrong: Wrong): Read<string> {
  const found = /^(\d{4})-(\d\d)-(\d\d)[ T](\d\d):(\d\d)$/.exec(text.trim());
  if (!found) return { trouble: wrong.moment };
  const [year, month, day, hour, minute] = found.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  if (month < 1 || month > 12 || day < 1 || day > 31 || hour > 23 || minute > 59)
    return { trouble: wrong.moment };
  const read = readings({ year, month, day, hour, minute }, zone);
  if (read.kind === 'none') return { trouble: wrong.moment };
  return { value: isoText(read.kind === 'two' ? read.earlier : read.at, zone) };
}
