import { addMinutes, minutesBetween, type Instant } from '../calendar/index.js';
import type { AccessWindow, Train } from '../model/index.js';
import type { DelayByTrain } from '../model/price-book.js';
import type { HeldTrain } from './types.js';

/**
 * The trains that a late handback of `window` can hold: due at or after its booked end, and listed for this window
 * or for none. In order due.
 *
 * @throws {RangeError} When a weight is negative.
 */
export function trainsAfter(window: AccessWindow, trains: readonly Train[]): readonly Train[] {
  return trains
    .filter((train) => train.window === undefined || train.window === window.id)
    .filter((train) => train.passesAt >= window.end)
    .map((train) => {
      if (train.weight >= 0) return train;
      throw new RangeError(`train ${train.id} has a negative weight (${train.weight})`);
    })
    .sort((a, b) => a.passesAt - b.passesAt || (a.id < b.id ? -1 : 1));
}

export type QueueRule = Pick<
  DelayByTrain,
  'headwayMinutes' | 'cancelAfterMinutes' | 'deemedMinutes' | 'cancelledTrains'
>;

/**
 * What becomes of each train when the line is given back at `handback`.
 *
 * One queue, first due first away. A train waits until handback, then until one headway behind the train before it
 * (or their timetabled gap where that is less, so a prompt handback delays nobody). Lateness is handed from train to
 * train until a gap in the timetable absorbs it. `trains` is in order due, as from `trainsAfter`; only late and
 * cancelled trains are returned. O(trains held).
 */
export function heldTrains(
  trains: readonly Train[],
  handback: Instant,
  rule: QueueRule,
): readonly HeldTrain[] {
  const held: HeldTrain[] = [];
  let ahead: { due: Instant; leaves: Instant } | undefined;
  for (const train of trains) {
    const due = train.passesAt;
    const spacing = ahead
      ? Math.min(rule.headwayMinutes, minutesBetween(ahead.due, due))
      : rule.headwayMinutes;
    const free = ahead ? addMinutes(ahead.leaves, spacing) : due;
    const leavesAt = Math.max(due, handback, free);
    // Everyone behind a train that is on time is on time too.
    if (leavesAt <= due) break;
    const minutesLate = minutesBetween(due, leavesAt);
    const cancelled =
      rule.cancelAfterMinutes !== undefined && minutesLate > rule.cancelAfterMinutes;
    held.push({
      train: train.id,
      dueAt: due,
      leavesAt,
      minutesLate,
      weight: train.weight,
      cancelled,
      countedMinutes: cancelled ? (rule.deemedMinutes ?? rule.cancelAfterMinutes!) : minutesLate,
    });
    if (!cancelled || rule.cancelledTrains === 'keep-path') ahead = { due, leaves: leavesAt };
  }
  return held;
}
