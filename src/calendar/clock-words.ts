import { MINUTE, type Instant } from './instant.js';
import { isoText, localTimeOf, readings, weekdayOf } from './local-time.js';

const days = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const two = (value: number): string => String(value).padStart(2, '0');

/**
 * A moment as a person reads a clock: `Sun 7 Mar 2027 09:40`. In an hour that clocks repeat the offset stands after it.
 * JSON keeps full stamps.
 */
export function clockWords(at: Instant, zone: string): string {
  const local = localTimeOf(at, zone);
  return `${dayWords(at, zone)} ${two(local.hour)}:${two(local.minute)}${offsetWhereTwice(at, zone)}`;
}

/** ` (+01:00)` in an hour that clocks repeat; else nothing. */
export function offsetWhereTwice(at: Instant, zone: string): string {
  if (readings(localTimeOf(at, zone), zone).kind !== 'two') return '';
  return ` (${/(Z|[+-]\d\d:\d\d)$/.exec(isoText(at, zone))![1]!})`;
}

/** `Sun 7 Mar 2027`. */
function dayWords(at: Instant, zone: string): string {
  const { day, month, year } = localTimeOf(at, zone);
  return `${days[weekdayOf(at, zone) - 1]!} ${day} ${months[month - 1]!} ${year}`;
}

/** When something is due: midnight is read as the end of the day before, `end of Wed 31 Mar 2027`. */
export function dueWords(at: Instant, zone: string): string {
  const { hour, minute } = localTimeOf(at, zone);
  if (hour !== 0 || minute !== 0) return clockWords(at, zone);
  return `end of ${dayWords(at - MINUTE, zone)}`;
}
