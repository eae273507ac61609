import { localTimeOf, MINUTE, type Instant } from '../../src/calendar/index.js';
import { spokenNow } from './language.js';

const two = (n: number): string => String(n).padStart(2, '0');
const kept = new Map<string, unknown>();

/** A formatter is dear to make and is made once for a language. */
function once<T>(key: string, make: () => T): T {
  let found = kept.get(key) as T | undefined;
  if (found === undefined) kept.set(key, (found = make()));
  return found;
}

/** British English writes no comma after the day of the week and one order of day and month: the words are British too. */
const isBritish = (language: string): boolean => language === 'en' || language === 'en-GB';

type DayOptions = Pick<Intl.DateTimeFormatOptions, 'weekday' | 'day' | 'month' | 'year'>;

/** Digits are those of clocks, which are written alike everywhere. */
function dateFormat(language: string, options: DayOptions): Intl.DateTimeFormat {
  return once(
    `${language} ${JSON.stringify(options)}`,
    () =>
      new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC', numberingSystem: 'latn' }),
  );
}

/** A day of the calendar as the language in force writes it. */
function written(at: Instant, zone: string, options: DayOptions): string {
  const { year, month, day } = localTimeOf(at, zone);
  const date = Date.UTC(year, month - 1, day);
  const { figures } = spokenNow();
  if (!isBritish(figures)) return dateFormat(figures, options).format(date);
  const { weekday, month: named } = options;
  return [
    ...(weekday ? [dateFormat('en', { weekday }).format(date)] : []),
    day,
    ...(named ? [dateFormat('en', { month: named }).format(date)] : []),
    ...(options.year ? [year] : []),
  ].join(' ');
}

/** Words between figures, by the language of the element's words. */
const phrases = {
  en: {
    to: (from: string, to: string) => `${from} to ${to}`,
    endOf: (day: string) => `the end of ${day}`,
  },
  de: {
    to: (from: string, to: string) => `${from} bis ${to}`,
    endOf: (day: string) => `Tagesende ${day}`,
  },
};
const phrase = (): (typeof phrases)['en'] =>
  phrases[spokenNow().words as keyof typeof phrases] ?? phrases.en;

/** What the clock shows: `05:30`. */
export function clockText(at: Instant, zone: string): string {
  const { hour, minute } = localTimeOf(at, zone);
  return `${two(hour)}:${two(minute)}`;
}

/** `Sat 27 Mar`. */
export function dayText(at: Instant, zone: string): string {
  return written(at, zone, { weekday: 'short', day: 'numeric', month: 'short' });
}

/** `27 Mar`. */
export function dateText(at: Instant, zone: string): string {
  return written(at, zone, { day: 'numeric', month: 'short' });
}

/** `Sat 27 Mar 2027`. */
export function fullDayText(at: Instant, zone: string): string {
  return written(at, zone, { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' });
}

/** `Sat 27 Mar 2027, 23:30`. */
export function momentText(at: Instant, zone: string): string {
  return `${fullDayText(at, zone)}, ${clockText(at, zone)}`;
}

/** When something is due: midnight is read as the end of the day before, `the end of Wed 31 Mar 2027`. */
export function dueText(at: Instant, zone: string): string {
  if (clockText(at, zone) !== '00:00') return momentText(at, zone);
  return phrase().endOf(fullDayText(at - MINUTE, zone));
}

/** `Sat 27 Mar 23:30 to Sun 28 Mar 06:00`; the second day is left out when it is the first. */
export function stretchText(from: Instant, to: Instant, zone: string): string {
  const first = dayText(from, zone);
  const last = dayText(to, zone);
  return phrase().to(
    `${first} ${clockText(from, zone)}`,
    `${last === first ? '' : `${last} `}${clockText(to, zone)}`,
  );
}

/** The name of a day of the week, 1 Monday to 7 Sunday: `Mon`, or `Monday`. */
export function weekdayText(day: number, length: 'short' | 'long' = 'short'): string {
  // The first of these days was a Monday.
  return dateFormat(spokenNow().figures, { weekday: length }).format(Date.UTC(2024, 0, day));
}

/** A number with its groups and its decimal sign: `1,234.5`. `decimals`: that many, no more and no fewer. */
export function numberText(value: number | bigint, decimals?: number): string {
  return numberFormat(decimals).format(value);
}

function numberFormat(decimals?: number): Intl.NumberFormat {
  const { figures } = spokenNow();
  const language = isBritish(figures) ? 'en-GB' : figures;
  return once(`${language} ${decimals}`, () => {
    const places = decimals === undefined ? {} : { minimumFractionDigits: decimals };
    return new Intl.NumberFormat(language, {
      ...places,
      maximumFractionDigits: decimals ?? 3,
      numberingSystem: 'latn',
      useGrouping: true,
    });
  });
}

/** `.` or `,`. */
export function decimalSign(): string {
  const parts = numberFormat(1).formatToParts(0.5);
  return parts.find((part) => part.type === 'decimal')?.value ?? '.';
}

/** Whether a sum of money is written after its currency: `GBP 1.50`. */
export function currencyFirst(): boolean {
  const { figures } = spokenNow();
  return once(`${figures} currency`, () => {
    const how = { style: 'currency', currency: 'EUR', currencyDisplay: 'code' } as const;
    return new Intl.NumberFormat(figures, how).formatToParts(1)[0]?.type === 'currency';
  });
}

/** `1 window`, `3 windows`. */
export function countText(count: number, text: string, many = `${text}s`): string {
  return `${numberText(count)} ${count === 1 ? text : many}`;
}

/** `12 d 4 h`, `5 h 20`, `-3 d`: a float, which is read in days once it has any. */
export function floatText(minutes: number): string {
  const size = Math.abs(minutes);
  const sign = minutes < 0 ? '\u2212' : '';
  const d = Math.floor(size / 1440);
  const h = Math.floor((size % 1440) / 60);
  if (d > 0) return `${sign}${d} d${h > 0 ? ` ${h} h` : ''}`;
  return `${sign}${h > 0 ? `${h} h ${two(Math.round(size % 60))}` : `${Math.round(size)} min`}`;
}
