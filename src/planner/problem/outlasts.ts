import type { AccessWindow } from '../../model/index.js';
import { asOpen } from './compile.js';
import type { LedgerCache } from './ledger-cache.js';
import type { Skeleton } from './skeleton.js';

/**
 * Whether it shows at a glance that not all of some work goes in a window, as if that took it: its longest chain has no
 * room, whatever else there is.
 *
 * @param longerBy Minutes by which the window is thought longer.
 */
export function outlasts(
  skeleton: Skeleton,
  window: AccessWindow,
  longerBy: number,
  book: LedgerCache,
): boolean {
  return skeleton.chain > roomIn(skeleton, window, longerBy, book);
}

/**
 * Minutes from the first that is usable for some of the inside work to the last, as if the window took it; less than none
 * where there are none for some of it.
 */
export function roomIn(
  { groups }: Skeleton,
  window: AccessWindow,
  longerBy: number,
  book: LedgerCache,
): number {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { activity, needs } of groups) {
    if (activity.place === 'outside') continue;
    const { slots, barred } = book.usable.of(asOpen(window, needs), needs, longerBy);
    if (barred || slots.length === 0) return -1;
    first = Math.min(first, slots[0]!.start);
    last = Math.max(last, slots.at(-1)!.end);
  }
  return first < last ? last - first : Number.POSITIVE_INFINITY;
}
