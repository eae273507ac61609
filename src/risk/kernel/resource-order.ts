import { localTimeOf, type Instant } from '../../calendar/index.js';
import type { Activity, Resource } from '../../model/index.js';

/** A visit to the site, as far as its order on shared plant is concerned. */
export interface OrderedVisit {
  readonly activity: Activity;
  readonly from: Instant;
  readonly to: Instant;
}

/** How much of a resource there is at a moment: the rows that cover it, added up. */
export function capacityAt(resource: Resource, at: Instant, zone: string): number {
  const local = localTimeOf(at, zone);
  const minute = local.hour * 60 + local.minute;
  let capacity = 0;
  for (const row of resource.availability) {
    if (at < (row.from ?? -Infinity) || at >= (row.to ?? Infinity)) continue;
    const from = row.dailyFromMinute ?? 0;
    const to = row.dailyToMinute ?? 1440;
    const inBand = from < to ? minute >= from && minute < to : minute >= from || minute < to;
    if (inBand) capacity += row.capacity;
  }
  return capacity;
}

/**
 * Which visits wait for which others so that no resource is ever asked for more than there is, however long things
 * take: the planned sequence is kept. Pairs of indices, the first being waited for.
 *
 * Each piece of plant is handed from visit to visit in the planned order of starts; one that has stood idle is taken
 * before one that is still in use, so no visit waits that need not.
 */
export function resourceOrder(
  visits: readonly OrderedVisit[],
  resources: readonly Resource[],
  zone: string,
): readonly (readonly [number, number])[] {
  const inOrder = [...visits.keys()].sort(
    (a, b) => visits[a]!.from - visits[b]!.from || visits[a]!.to - visits[b]!.to || a - b,
  );
  const pairs = new Map<string, readonly [number, number]>();
  for (const resource of resources) {
    /** For each piece: the visit that has it, and until when. */
    const pieces: { holder: number; until: Instant }[] = [];
    for (const index of inOrder) {
      const visit = visits[index]!;
      const amount = visit.activity.resources
        .filter((demand) => demand.resource === resource.id)
        .reduce((sum, demand) => sum + demand.amount, 0);
      if (amount === 0) continue;
      const capacity = Math.max(amount, capacityAt(resource, visit.from, zone));
      while (pieces.length < capacity) pieces.push({ holder: -1, until: -Infinity });
      const free = pieces
        .slice(0, capacity)
        .sort((a, b) => a.until - b.until)
        .slice(0, amount);
      for (const piece of free) {
        if (piece.holder >= 0) pairs.set(`${piece.holder} ${index}`, [piece.holder, index]);
        piece.holder = index;
        piece.until = visit.to;
      }
    }
  }
  // A plan that asks for more than there is would make visits at the same time wait for each other: those are let be.
  return [...pairs.values()].filter(([first, then]) => visits[first]!.to <= visits[then]!.from);
}
