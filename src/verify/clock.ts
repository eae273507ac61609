// Local time of a zone by Temporal, so by another library than the project's calendar.
import { Temporal } from 'temporal-polyfill';
import { MINUTE, type Instant } from './plan-types.js';

const DAY = 1440 * MINUTE;
/** More than any zone's offset from UTC. */
const MAX_OFFSET = 2 * DAY;

/** A period with one UTC offset; `ahead` in milliseconds. */
interface OffsetPeriod {
  readonly start: Instant;
  readonly end: Instant;
  readonly ahead: number;
}

/** Local days and times of a zone. Day 0 is 1970-01-01, a Thursday. */
class Clock {
  readonly #zone: string;
  #periods: readonly OffsetPeriod[] = [];

  constructor(zone: string) {
    this.#zone = zone;
  }

  /** The local day. */
  dayAt(at: Instant): number {
    const part = this.#around(at, at).find((steady) => steady.start <= at && at < steady.end)!;
    return Math.floor((at + part.ahead) / DAY);
  }

  /**
   * The moment of a local time, given as day and minutes after midnight. If it occurs twice, `twice` chooses; if it is
   * skipped, the moment at which clocks go forward.
   */
  moment(day: number, minutes: number, twice: 'earlier' | 'later'): Instant {
    const shown = day * DAY + minutes * MINUTE;
    const parts = this.#around(shown - MAX_OFFSET, shown + MAX_OFFSET);
    const found = parts
      .filter((part) => part.start + part.ahead <= shown && shown < part.end + part.ahead)
      .map((part) => shown - part.ahead);
    if (found.length > 0) return twice === 'earlier' ? found[0]! : found.at(-1)!;
    return parts.find((part) => part.start + part.ahead > shown)!.start;
  }

  /** Offset periods that cover a time and some of its surroundings. */
  #around(from: Instant, to: Instant): readonly OffsetPeriod[] {
    const first = this.#periods[0];
    const last = this.#periods.at(-1);
    if (!first || !last || from < first.start || to >= last.end)
      this.#periods = this.#read(
        Math.min(from, first?.start ?? from) - 200 * DAY,
        Math.max(to, last?.end ?? to) + 200 * DAY,
      );
    return this.#periods;
  }

  #read(from: Instant, to: Instant): readonly OffsetPeriod[] {
    const found: OffsetPeriod[] = [];
    let at = Temporal.Instant.fromEpochMilliseconds(from).toZonedDateTimeISO(this.#zone);
    while (at.epochMilliseconds < to) {
      const next = at.getTimeZoneTransition('next');
      const end = Math.min(next?.epochMilliseconds ?? to, to);
      found.push({ start: at.epochMilliseconds, end, ahead: at.offsetNanoseconds / 1e6 });
      if (!next || end === to) break;
      at = next;
    }
    return found;
  }
}

export type { Clock };

/** 0 Monday to 6 Sunday. */
export function weekdayOf(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

const known = new Map<string, Clock>();

/** The clock of a zone, cached. */
export function clockOf(zone: string): Clock {
  let clock = known.get(zone);
  if (!clock) known.set(zone, (clock = new Clock(zone)));
  return clock;
}
