import { localTimeOf, MINUTE, weekdayOf, type Instant } from '../../src/calendar/index.js';

const days = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const two = (n: number): string => String(n).padStart(2, '0');

/** What the clock shows: `05:30`. */
export function clockText(at: Instant, zone: string): string {
  const { hour, minute } = localTimeOf(at, zone);
  return `${two(hour)}:${two(minute)}`;
}

/** `Sat 27 Mar`. */
export function dayText(at: Instant, zone: string): string {
  const { day, month } = localTimeOf(at, zone);
  return `${days[weekdayOf(at, zone) - 1]} ${day} ${months[month - 1]}`;
}

/** `Sat 27 Mar 2027, 23:30`. */
export function momentText(at: Instant, zone: string): string {
  return `${dayText(at, zone)} ${localTimeOf(at, zone).year}, ${clockText(at, zone)}`;
}

/** When something is due: midnight is read as the end of the day before, `the end of Wed 31 Mar 2027`. */
export function dueText(at: Instant, zone: string): string {
  if (clockText(at, zone) !== '00:00') return momentText(at, zone);
  const before = at - MINUTE;
  return `the end of ${dayText(before, zone)} ${localTimeOf(before, zone).year}`;
}

/** `Sat 27 Mar 23:30 to Sun 28 Mar 06:00`; the second day is left out when it is the first. */
export function stretchText(from: Instant, to: Instant, zone: string): string {
  const first = dayText(from, zone);
  const last = dayText(to, zone);
  return `${first} ${clockText(from, zone)} to ${last === first ? '' : `${last} `}${clockText(to, zone)}`;
}

/** `1 window`, `3 windows`. */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`;
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
