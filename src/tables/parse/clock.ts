import { refuse, type Parsed } from './parsed.js';

/** A time of day; 24:00 is the end of the day. */
export interface ClockTime {
  /** 0-24. */
  readonly hour: number;
  readonly minute: number;
}

const clock = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?: ?([ap])\.?m\.?)?$/i;
const dotted = /^(\d{1,2})(?:[.](\d{2})(?: ?uhr| ?h)?|:(\d{2}) ?(?:uhr|h)|h(\d{2})| ?uhr| h)$/i;
const fourDigits = /^(\d{2})(\d{2}) ?(?:hrs?|h)?$/i;

/** Reads `05:30`, `5:30 am`, `0530`, `5.30`, `5h30`, `5:30 Uhr`, `24:00`; `undefined` when the text does not look like a time of day. */
export function parseClock(text: string): Parsed<ClockTime> | undefined {
  const mark = dotted.exec(text);
  if (mark) return parseClock(`${mark[1]!}:${mark[2] ?? mark[3] ?? mark[4] ?? '00'}`);
  const found = clock.exec(text);
  const plainDigits = found ? null : fourDigits.exec(text);
  if (!found && !plainDigits) return undefined;
  const half = found?.[5]?.toLowerCase();
  const written = Number((found ?? plainDigits)![1]);
  const minute = Number((found ?? plainDigits)![2]);
  if (half && (written < 1 || written > 12)) return refuse('no-such-time', { text });
  const hour = half ? (written % 12) + (half === 'p' ? 12 : 0) : written;
  if (minute > 59 || hour > 24 || (hour === 24 && minute > 0)) {
    return refuse('no-such-time', { text });
  }
  if (Number(found?.[3] ?? 0) !== 0 || Number(found?.[4] ?? 0) !== 0) {
    return refuse('not-on-a-minute', { text });
  }
  return { value: { hour, minute } };
}

/** Minutes from the start of the local day, 0-1440. */
export function minuteOfDay(time: ClockTime): number {
  return time.hour * 60 + time.minute;
}
