// What a workbook's cell says, as text that the readers of this room read. A workbook has local wall times only, so no
// zone is asked and none can shift them.
import { withoutEnd } from './without-end.js';

/** How days are counted: from the end of 1899, with a 29 February 1900 that never was, or from the start of 1904. */
export type DaySystem = '1900' | '1904';

export interface WorkbookCell {
  readonly value: string | number | boolean | Date | null;
  /** The cell's number format; absent when it has none. */
  readonly format?: string | undefined;
}

const DAY = 86_400_000;
const start1900 = Date.UTC(1899, 11, 31);
const start1904 = Date.UTC(1904, 0, 1);

/**
 * The cell as text: a day as `2027-03-28`, a day and time as `2027-03-28 23:30`, a time of day as `05:30`, a length of
 * time as `26:30`, a share as `45%`, yes and no as `TRUE` and `FALSE`; any other number with at most 15 digits, as
 * workbooks keep them.
 */
export function cellText({ value, format = '' }: WorkbookCell, system: DaySystem): string {
  if (value === null) return '';
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'number')
    return bare(format).includes('%') ? `${numberText(value * 100)}%` : numberText(value);
  return timeText(value, format, system);
}

/** A number without an exponent wherever it can be written without one. */
function numberText(value: number): string {
  const text = String(Number(value.toPrecision(15)));
  if (!text.includes('e')) return text;
  const plain = withoutEnd(withoutEnd(value.toFixed(Math.abs(value) < 1 ? 20 : 0), '0'), '.');
  return Number(plain) === value ? plain : text;
}

/** A format without what it only shows: quoted words, single escaped signs, conditions and colours. */
function bare(format: string): string {
  return format
    .replace(/"[^"]*"/g, '')
    .replace(/[\\_*]./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\][]*\]/gi, '')
    .toLowerCase();
}

const two = (count: number): string => String(count).padStart(2, '0');

function timeText(at: Date, format: string, system: DaySystem): string {
  const shape = bare(format).split(';')[0]!;
  // A workbook's number of days holds a time to a small part of a second; nobody wrote more than a whole one.
  const seconds = Math.round(at.getTime() / 1000);
  const since = seconds * 1000 - (system === '1904' ? start1904 : start1900);
  if (/\[(?:h+|m+|s+)\]/.test(shape)) return lengthText(elapsed(since, system));
  const time = timeOfDay(seconds);
  const hasTime = time !== '00:00';
  const saysTime = /[hs]|am\/pm/.test(shape);
  const saysDay = /[yd]/.test(shape) || (shape.includes('m') && !saysTime);
  // A time of day is a number below 1; with a day under it, the day is told even where the format hides it.
  if (!saysDay && since >= 0 && since < DAY) return time;
  const day = new Date(seconds * 1000).toISOString().slice(0, 10);
  return saysTime || hasTime ? `${day} ${time}` : day;
}

function timeOfDay(seconds: number): string {
  const inDay = ((seconds % 86_400) + 86_400) % 86_400;
  const rest = inDay % 60;
  const clock = `${two(Math.floor(inDay / 3600))}:${two(Math.floor(inDay / 60) % 60)}`;
  return rest === 0 ? clock : `${clock}:${two(rest)}`;
}

/** Milliseconds counted, with the day that never was put back in. */
const elapsed = (since: number, system: DaySystem): number =>
  system === '1900' && since >= 60 * DAY ? since + DAY : since;

function lengthText(milliseconds: number): string {
  const seconds = Math.round(Math.abs(milliseconds) / 1000);
  const text = `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}`;
  const rest = seconds % 60;
  return `${milliseconds < 0 ? '-' : ''}${text}${rest === 0 ? '' : `:${two(rest)}`}`;
}
