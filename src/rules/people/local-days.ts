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

/** A band of the night by the clock. At or before `from`, `to` is on the next day. */
export interface NightBand {
  readonly from: string;
  readonly to: string;
}

/** The moment at which clocks showed the same time `days` local days before; where they skipped it, the change. */
export function daysBefore(at: Instant, days: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  return momentOn(dayAt(at, zone) - days, hour * 60 + minute, zone);
}

/** The stretch of night that starts on a local day. Elapsed: the seven hours from 23:00 to 06:00 are six in March. */
export function nightOf(day: DayNumber, { from, to }: NightBand, zone: string): Interval {
  const endDay = to > from ? day : day + 1;
  return {
    start: momentOn(day, minuteOfClock(from), zone),
    end: momentOn(endDay, minuteOfClock(to), zone),
  };
}

/** Days after which nights only repeat: a year with both its clock changes. */
const ALL_NIGHTS_DAYS = 400;

/** The day on which the night starts that holds most of `duty`, if any holds at least `leastMinutes` of it. */
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
