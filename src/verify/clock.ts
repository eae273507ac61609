// The clocks of a zone, asked of Temporal: another library than the calendar of the project rests on.
import { Temporal } from 'temporal-polyfill';
import { MINUTE, type Instant } from './words.js';

const DAY = 1440 * MINUTE;
/** Nobody's clocks are further from UTC than this. */
const FAR = 2 * DAY;

/** A time in which the clocks of a zone stand still against UTC. */
interface Steady {
  readonly start: Instant;
  readonly end: Instant;
  readonly ahead: number;
}

/** What the clocks of one zone show. Days are counted from 1970-01-01 as 0, a Thursday. */
class Clock {
  readonly #zone: string;
  #steady: readonly Steady[] = [];

  constructor(zone: string) {
    this.#zone = zone;
  }

  /** The day that the clocks show. */
  dayAt(at: Instant): number {
    const part = this.#around(at, at).find((steady) => steady.start <= at && at < steady.end)!;
    return Math.floor((at + part.ahead) / DAY);
  }

  /**
   * The moment at which the clocks show so many minutes after midnight of a day. Shown twice, `twice` says which; shown
   * never, it is the moment at which they were put forward.
   */
  moment(day: number, minutes: number, twice: 'earlier' | 'later'): Instant {
    const shown = day * DAY + minutes * MINUTE;
    const parts = this.#around(shown - FAR, shown + FAR);
    const found = parts
      .filter((part) => part.start + part.ahead <= shown && shown < part.end + part.ahead)
      .map((part) => shown - part.ahead);
    if (found.length > 0) return twice === 'earlier' ? found[0]! : found.at(-1)!;
    return parts.find((part) => part.start + part.ahead > shown)!.start;
  }

  /** The steady times about a stretch, from before its start to after its end. */
  #around(from: Instant, to: Instant): readonly Steady[] {
    const first = this.#steady[0];
    const last = this.#steady.at(-1);
    if (!first || !last || from < first.start || to >= last.end)
      this.#steady = this.#read(
        Math.min(from, first?.start ?? from) - 200 * DAY,
        Math.max(to, last?.end ?? to) + 200 * DAY,
      );
    return this.#steady;
  }

  #read(from: Instant, to: Instant): readonly Steady[] {
    const found: Steady[] = [];
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

/** The clock of a zone; what it has read of the zone is kept. */
export function clockOf(zone: string): Clock {
  let clock = known.get(zone);
  if (!clock) known.set(zone, (clock = new Clock(zone)));
  return clock;
}
