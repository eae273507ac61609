import { addMinutes, minutesBetween, type Instant } from '../calendar/index.js';
import type { AccessWindow, Train } from '../model/index.js';
import type { DelayByTrain } from '../model/price-book.js';
import type { HeldTrain } from './types.js';

/**
 * Trains that a late handback of `window` can hold: due at or after its booked end, and listed for this window or for
 * no window. Sorted by due time.
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
 * When each train runs if the line is handed back at `handback`.
 *
 * One queue, first due, first away. A train waits for handback, then for one headway after the train before it (or
 * their timetabled gap if shorter, so a prompt handback delays nobody). Delay passes from train to train until a gap in
 * the timetable absorbs it. `trains` is sorted by due time, as from `trainsAfter`. Returns only late and cancelled
 * trains. O(trains held).
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
    // All trains behind one that is on time are on time too.
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
