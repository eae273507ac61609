import { plain, refuse, type Parsed } from './parsed.js';
import { parseDecimal } from './number.js';

/** What a number without a unit counts. */
export type DurationUnit = 'minutes' | 'hours' | 'days';

const minutesIn: Readonly<Record<DurationUnit, number>> = { minutes: 1, hours: 60, days: 1440 };
const longestMinutes = 5_256_000;

const number = String.raw`(\d{1,9}(?:[.,]\d{1,9})?)`;
const days = String.raw`(?:days?|d)`;
const hours = String.raw`(?:hours?|hrs?|h)`;
const minutes = String.raw`(?:minutes?|mins?|m)`;
const inWords = new RegExp(
  String.raw`^(?:${number} ?${days})? ?(?:${number} ?${hours})? ?(?:${number} ?${minutes}?)?$`,
  'i',
);
const iso = new RegExp(
  String.raw`^P(?:${number}D)?(?:T(?:${number}H)?(?:${number}M)?(?:${number}S)?)?$`,
  'i',
);
const clock = /^(\d{1,6}):([0-5]\d)(?::00)?$/;

/**
 * Reads a duration as whole minutes: `90`, `1:30`, `1 h 30`, `1h30`, `1.5 h`, `2 d`, `90 min`, `PT1H30M`; a decimal
 * comma is understood. A fraction of a minute is refused, never rounded.
 *
 * @param bare What a number without a unit counts.
 */
export function parseDuration(text: string, bare: DurationUnit = 'minutes'): Parsed<number> {
  const tidy = plain(text);
  if (/^-/.test(tidy)) return refuse('duration-negative', { text });
  const clocked = clock.exec(tidy);
  if (clocked) return checked(text, Number(clocked[1]) * 60 + Number(clocked[2]));
  if (/^\d{1,9}(?:[.,]\d{1,9})?$/.test(tidy)) return sum(text, [[tidy, minutesIn[bare]]]);
  const period = iso.exec(tidy);
  if (period && /\d/.test(tidy)) {
    const [, d, h, m, s] = period;
    return sum(text, [
      [d, 1440],
      [h, 60],
      [m, 1],
      [s, 1 / 60],
    ]);
  }
  const words = inWords.exec(tidy);
  if (words && /\d/.test(tidy)) {
    const [, d, h, m] = words;
    if (h !== undefined && m !== undefined && Number(m.replace(',', '.')) >= 60)
      return refuse('duration-not-read/minutes', { text, m });
    return sum(text, [
      [d, 1440],
      [h, 60],
      [m, 1],
    ]);
  }
  return refuse('duration-not-read', { text });
}

type Part = readonly [digits: string | undefined, minutes: number];

function sum(text: string, parts: readonly Part[]): Parsed<number> {
  let total = 0;
  for (const [digits, size] of parts) {
    if (digits === undefined) continue;
    const read = parseDecimal(digits);
    if ('problem' in read) return read;
    total += read.value * size;
  }
  return checked(text, total);
}

function checked(text: string, total: number): Parsed<number> {
  const value = Math.round(total);
  // A decimal such as 1.1 h is 66.00000000000001 min in floating point; no duration a person means is this close.
  if (Math.abs(total - value) > 1e-6) {
    return refuse('duration-not-whole-minutes', { text });
  }
  if (value > longestMinutes) return refuse('duration-too-long', { text });
  return { value };
}
