import type { AccessWindow } from '../../model/index.js';
import { asOpen, needsIn } from './compile.js';
import type { LedgerCache } from './ledger-cache.js';
import type { Skeleton } from './skeleton.js';

/**
 * Whether it shows at a glance that not all of some work goes in a window, as if that took it: some of it has no usable
 * time there, or the longest chain of it takes longer than from the first usable minute to the last.
 *
 * @param longerBy Minutes by which the window is thought longer.
 */
export function outlasts(
  { groups, chain }: Skeleton,
  window: AccessWindow,
  longerBy: number,
  book: LedgerCache,
): boolean {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const group of groups) {
    if (group.activity.place === 'outside') continue;
    const { slots, barred } = book.usable.of(asOpen(window), needsIn(window, group), longerBy);
    if (barred || slots.length === 0) return true;
    first = Math.min(first, slots[0]!.start);
    last = Math.max(last, slots.at(-1)!.end);
  }
  return chain > last - first && last > first;
}
