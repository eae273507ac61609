import {
  intersectionOf,
  lengthMinutes,
  localTimeOf,
  readings,
  startOfLocalDay,
  DAY,
  HOUR,
  type Instant,
  type Interval,
} from '../../calendar/index.js';

/** Serial number of the local day that holds a moment: neighbours differ by one, whatever clocks do. */
export function dayNumber(at: Instant, zone: string): number {
  const { year, month, day } = localTimeOf(at, zone);
  return Math.round(Date.UTC(year, month - 1, day) / DAY);
}

/** The moment at which clocks show `clock` on the local day that starts at `dayStart`; where they skip it, the change. */
export function clockOn(dayStart: Instant, clock: string, zone: string): Instant {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  // Noon names the day even where midnight does not exist.
  const { year, month, day } = localTimeOf(dayStart + 12 * HOUR, zone);
  const reading = readings({ year, month, day, hour, minute }, zone);
  if (reading.kind === 'one') return reading.at;
  return reading.kind === 'two' ? reading.earlier : reading.gap;
}

/** The moment that clocks showed the same time `days` local days before; where they skipped it, the change. */
export function daysBefore(at: Instant, days: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  return clockOn(startOfLocalDay(at, zone, -days), `${hour}:${minute}`, zone);
}

/** The stretch of night that starts on the local day at `dayStart`. Elapsed: seven hours are six in March. */
export function nightOf(dayStart: Instant, from: string, to: string, zone: string): Interval {
  const start = clockOn(dayStart, from, zone);
  const endDay = to > from ? dayStart : startOfLocalDay(dayStart, zone, 1);
  return { start, end: clockOn(endDay, to, zone) };
}

/**
 * Number of the local day whose night holds most of `duty`, if any holds at least `leastMinutes` of it.
 */
export function nightNumber(
  duty: Interval,
  night: { from: string; to: string; leastMinutes: number },
  zone: string,
): number | undefined {
  let found: { number: number; minutes: number } | undefined;
  let dayStart = startOfLocalDay(duty.start, zone, -1);
  while (dayStart < duty.end) {
    const shared = intersectionOf(duty, nightOf(dayStart, night.from, night.to, zone));
    const minutes = shared ? lengthMinutes(shared) : 0;
    if (minutes >= night.leastMinutes && minutes > (found?.minutes ?? 0))
      found = { number: dayNumber(dayStart + 12 * HOUR, zone), minutes };
    dayStart = startOfLocalDay(dayStart, zone, 1);
  }
  return found?.number;
}
