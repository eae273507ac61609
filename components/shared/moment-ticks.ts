import {
  DAY,
  localTimeOf,
  MINUTE,
  startOfLocalDay,
  type Instant,
} from '../../src/calendar/index.js';
import { clockText, dayText } from './format.js';

const minuteSteps = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720];

/** Round moments within a stretch, at most so many: local midnights, or between them minutes and hours of the clock. */
export function momentTicks(from: Instant, to: Instant, most: number, zone: string): Instant[] {
  const step = minuteSteps.find((value) => (to - from) / (value * MINUTE) <= most);
  return step === undefined ? midnights(from, to, most, zone) : clockTicks(from, to, step, zone);
}

/** `Sat 27 Mar` at midnight, else `05:30`; the first of a row names its day too. */
export function momentTickText(at: Instant, zone: string, isFirst = false): string {
  const clock = clockText(at, zone);
  if (clock === '00:00') return dayText(at, zone);
  return isFirst ? `${dayText(at, zone)} ${clock}` : clock;
}

function midnights(from: Instant, to: Instant, most: number, zone: string): Instant[] {
  const step = Math.max(1, Math.ceil((to - from) / DAY / most));
  const ticks: Instant[] = [];
  const first = startOfLocalDay(from, zone, 0) < from ? 1 : 0;
  for (let day = first; ; day += step) {
    const at = startOfLocalDay(from, zone, day);
    if (at > to) return ticks;
    ticks.push(at);
  }
}

/** Every so many minutes of the clock. A day in which clocks change has its steps counted from each hour anew. */
function clockTicks(from: Instant, to: Instant, step: number, zone: string): Instant[] {
  const ticks: Instant[] = [];
  let at = Math.ceil(from / MINUTE) * MINUTE;
  while (at <= to) {
    const { hour, minute } = localTimeOf(at, zone);
    const past = (hour * 60 + minute) % step;
    if (past === 0) {
      ticks.push(at);
      // Up to the next whole hour at most: there the clock may have been changed.
      at += Math.min(step, 60 - minute) * MINUTE;
    } else at += Math.min(step - past, 60 - minute) * MINUTE;
  }
  return ticks;
}
