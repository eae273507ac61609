import {
  dailyBands,
  intersect,
  minuteOfClock,
  unionOf,
  type Interval,
  type IntervalSet,
} from '../calendar/index.js';
import {
  together,
  weekdays,
  type AccessWindow,
  type ClosedTime,
  type Curfew,
  type Needs,
} from '../model/index.js';
import type { Claim } from './claim.js';
import { sayOfLedger, sourceOf } from './ledger-sentences.js';

/** Whether a curfew stops work, given whether the work is loud. */
export function barsWork(curfew: Curfew, loud: boolean): boolean {
  return curfew.bars === 'all' || loud;
}

/** Intervals of a curfew within `range`, in the local time of `zone`. */
export function curfewStretches(curfew: Curfew, range: Interval, zone: string): IntervalSet {
  const band = {
    fromMinute: minuteOfClock(curfew.from),
    toMinute: minuteOfClock(curfew.to),
    ...(curfew.days && { days: curfew.days.map((day) => weekdays.indexOf(day) + 1) }),
  };
  return dailyBands(band, range, zone);
}

/**
 * Intervals of a window in which curfews stop work with these needs, in list order; they may overlap.
 *
 * A curfew belongs to the day it starts on, so one that began the evening before the window counts. `from` and `to` are
 * local times in the window's zone: over a clock change the curfew is an hour longer or shorter.
 */
export function curfewClaims(
  window: AccessWindow,
  needs: Needs,
  curfews: readonly Curfew[],
): readonly Claim[] {
  return curfews
    .filter((curfew) => barsWork(curfew, needs.loud))
    .flatMap((curfew) => {
      const why = together([sayOfLedger('curfew', curfew), ...sourceOf(curfew.source)]);
      return curfewStretches(curfew, window, window.zone).map((stretch) => ({
        ...stretch,
        rule: { text: curfew.name },
        kind: 'curfew' as const,
        why,
      }));
    });
}

/** Intervals of closed time within `range`, in the local time of `zone`. */
export function closedStretches(closed: ClosedTime, range: Interval, zone: string): IntervalSet {
  return unionOf([
    ...intersect(closed.stretches, [range]),
    ...closed.daily.flatMap((band) => curfewStretches(band, range, zone)),
  ]);
}

/** Time of a window that the site closes to work with these needs, each with its own rule and reason. */
export function closedClaims(
  window: AccessWindow,
  { heeds = [] }: Needs,
  closed: readonly ClosedTime[] = [],
): readonly Claim[] {
  return closed
    .filter((closedTime) => heeds.includes(closedTime.name))
    .flatMap((closedTime) =>
      closedStretches(closedTime, window, window.zone).map((stretch) => ({
        ...stretch,
        rule: closedTime.rule,
        kind: 'curfew' as const,
        why: closedTime.why,
      })),
    );
}
