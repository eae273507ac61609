import {
  dayAt,
  intersectionOf,
  lengthMinutes,
  localTimeOf,
  minuteOfClock,
  momentOn,
  type DayNumber,
  type Instant,
  type Interval,
} from '../../calendar/index.js';

/** A night band in local time. If `to` is not after `from`, it is on the next day. */
export interface NightBand {
  readonly from: string;
  readonly to: string;
}

/** The same local time `days` local days before; if clocks skipped it, the moment of the change. */
export function daysBefore(at: Instant, days: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  return momentOn(dayAt(at, zone) - days, hour * 60 + minute, zone);
}

/** The night that starts on a local day. Its length is elapsed time: 23:00 to 06:00 is six hours on the March clock change. */
export function nightOf(day: DayNumber, { from, to }: NightBand, zone: string): Interval {
  const endDay = to > from ? day : day + 1;
  return {
    start: momentOn(day, minuteOfClock(from), zone),
    end: momentOn(endDay, minuteOfClock(to), zone),
  };
}

/** After these days nights repeat: a year, with both clock changes. */
const ALL_NIGHTS_DAYS = 400;

/** The local day on which the night with most of `duty` starts, if a night has at least `leastMinutes` of it. */
export function nightWorked(
  duty: Interval,
  night: NightBand & { readonly leastMinutes: number },
  zone: string,
): DayNumber | undefined {
  let most = 0;
  let found: DayNumber | undefined;
  const first = dayAt(duty.start, zone) - 1;
  const last = Math.min(dayAt(duty.end, zone), first + ALL_NIGHTS_DAYS);
  for (let day = first; day <= last; day += 1) {
    const shared = intersectionOf(duty, nightOf(day, night, zone));
    const minutes = shared ? lengthMinutes(shared) : 0;
    if (minutes >= night.leastMinutes && minutes > most) {
      most = minutes;
      found = day;
    }
  }
  return found;
}
