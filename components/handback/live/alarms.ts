import { MINUTE, type Instant } from '../../../src/calendar/index.js';
import type { CutOff } from '../result-parts.js';

/** A cut-off that comes near, or is there. */
export interface Alarm {
  readonly name: string;
  readonly at: Instant;
  /** Minutes before it at which the alarm goes off; 0: at it. */
  readonly minutes: number;
}

/** Minutes before a cut-off at which the shift is warned. */
export const warnMinutes: readonly number[] = [15, 5, 0];

/** The alarms that go off after `from` and up to `to`, of what has not begun; the latest last. */
export function alarmsBetween(
  cutOffs: readonly CutOff[],
  from: Instant,
  to: Instant,
  minutes: readonly number[] = warnMinutes,
): readonly Alarm[] {
  return cutOffs
    .filter((cutOff) => cutOff.state === 'to-come')
    .flatMap((cutOff) =>
      minutes.map((before) => ({ name: cutOff.name, at: cutOff.latestStart, minutes: before })),
    )
    .filter(({ at, minutes: before }) => {
      const goesOff = at - before * MINUTE;
      return from < goesOff && goesOff <= to;
    })
    .sort((a, b) => a.at - a.minutes * MINUTE - (b.at - b.minutes * MINUTE));
}
