import { totalMinutes } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { LedgerBook } from '../problem/ledger-book.js';
import type { Problem, Visit } from '../problem/problem.js';

/** Usable minutes after the last inside work, for its needs; the least where several finish last. */
export function spareOf(
  problem: Problem,
  visits: readonly Visit[],
  window: AccessWindow,
  book: LedgerBook,
): number {
  const inside = visits.filter((visit) => visit.window >= 0);
  if (inside.length === 0)
    return totalMinutes(book.of(window, { isolation: [], loud: false }).usable);
  const last = Math.max(...inside.map((visit) => visit.end));
  let spare = Number.POSITIVE_INFINITY;
  for (const visit of inside) {
    if (visit.end < last) continue;
    let left = 0;
    for (const slot of problem.tasks[visit.task]!.slots)
      left += Math.max(0, slot.end - Math.max(slot.start, last));
    spare = Math.min(spare, left);
  }
  return spare;
}
