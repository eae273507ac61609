import {
  localTimeOf,
  MINUTE,
  offsetMinutes,
  readings,
  type Instant,
} from '../../src/calendar/index.js';

import type { Chance } from './result-parts.js';
import { clockText, dayText, numberText } from '../shared/format.js';

const offsetText = (minutes: number): string => {
  const size = Math.abs(minutes);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${minutes < 0 ? '\u2212' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
};

/** `05:30`, with its offset when clocks show that time twice: `01:30+01:00`. */
export function exactClock(at: Instant, zone: string): string {
  const clock = clockText(at, zone);
  const twice = readings(localTimeOf(at, zone), zone).kind === 'two';
  return twice ? `${clock}${offsetText(offsetMinutes(at, zone))}` : clock;
}

/** The time alone when it is on the day of `beside`, otherwise with its day: `Sun 28 Mar 05:30`. */
export function clockBeside(at: Instant, beside: Instant, zone: string): string {
  const day = dayText(at, zone);
  return `${day === dayText(beside, zone) ? '' : `${day} `}${exactClock(at, zone)}`;
}

/** An aim as it was set: `95 %`, `97.5 %`. */
export function aimText(share: number): string {
  return `${numberText(Number((100 * share).toFixed(2)))} %`;
}

/** Standard error in points of a percentage: `0.4`, `0.02`. */
export function errorText({ standardError }: Chance): string {
  const points = 100 * standardError;
  return numberText(points, points < 0.1 ? 2 : 1);
}

/** Whole minutes from `now` to `at`, rounded down so that a countdown never shows more time than there is. */
export function minutesUntil(at: Instant, now: Instant): number {
  return Math.floor((at - now) / MINUTE);
}
