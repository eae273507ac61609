import { presenceOf } from './supplies.js';
import { sharePlace } from './same-place.js';
import type { Clock } from './clock.js';
import type { PlacedWork } from './types.js';
import type { Activity, Instant, Plan, Stretch } from './plan-types.js';
import type { Job } from './work.js';

/** How much of a resource is free from a moment on. */
interface Level {
  readonly at: Instant;
  readonly free: number;
}

/** When an activity occupies its place. */
interface Occupation {
  readonly from: Instant;
  readonly to: Instant;
  readonly work: Activity;
}

/** Plant and places left free by the pieces of a plan. */
export class Spare {
  readonly #levels = new Map<string, readonly Level[]>();
  readonly #inside: Occupation[] = [];
  /** Those of `#inside` that must be alone. */
  readonly #alone: Occupation[] = [];

  constructor(plan: Plan, jobs: ReadonlyMap<string, Job>, clock: Clock) {
    const changes = new Map<string, Map<Instant, number>>();
    let [start, end] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    // A piece can move to the end of its window.
    for (const window of plan.windows) end = Math.max(end, window.end);
    for (const { activity, pieces } of jobs.values())
      for (const piece of pieces) {
        [start, end] = [Math.min(start, piece.from), Math.max(end, piece.to)];
        if (activity.place === 'inside' && piece.from < piece.to) {
          const occupation = { from: piece.from, to: piece.to, work: activity };
          this.#inside.push(occupation);
          if (activity.occupies === 'alone') this.#alone.push(occupation);
        }
        for (const { resource, amount } of activity.resources) {
          const own = changes.get(resource) ?? new Map<Instant, number>();
          changes.set(resource, own);
          own.set(piece.from, (own.get(piece.from) ?? 0) - amount);
          own.set(piece.to, (own.get(piece.to) ?? 0) + amount);
        }
      }
    for (const resource of plan.resources) {
      const own = changes.get(resource.id);
      if (!own) continue;
      for (const row of resource.availability)
        for (const there of presenceOf(row, { start, end }, clock)) {
          own.set(there.start, (own.get(there.start) ?? 0) + row.capacity);
          own.set(there.end, (own.get(there.end) ?? 0) - row.capacity);
        }
      let free = 0;
      this.#levels.set(
        resource.id,
        [...own].sort(([a], [b]) => a - b).map(([at, by]) => ({ at, free: (free += by) })),
      );
    }
  }

  /** Whether a piece can move later by `later` milliseconds with everything else in place. */
  takes(work: Activity, piece: PlacedWork, later: number): boolean {
    const moved: Stretch = { start: piece.from + later, end: piece.to + later };
    if (moved.start === moved.end) return true;
    const amounts = new Map<string, number>();
    for (const { resource, amount } of work.resources)
      amounts.set(resource, (amounts.get(resource) ?? 0) + amount);
    for (const [resource, amount] of amounts)
      if (amount > 0 && !this.#isFree(resource, amount, moved, piece)) return false;
    return (
      work.place === 'outside' ||
      (work.occupies === 'alone' ? this.#inside : this.#alone).every(
        (other) =>
          other.work === work ||
          other.to <= moved.start ||
          moved.end <= other.from ||
          !sharePlace(work, other.work),
      )
    );
  }

  #isFree(resource: string, amount: number, during: Stretch, own: PlacedWork): boolean {
    const levels = this.#levels.get(resource);
    if (!levels) return true;
    let low = 0;
    for (let high = levels.length; low < high;) {
      const middle = (low + high) >> 1;
      if (levels[middle]!.at <= during.start) low = middle + 1;
      else high = middle;
    }
    for (let i = low - 1; i < levels.length; i += 1) {
      const from = Math.max(during.start, levels[i]?.at ?? during.start);
      const to = Math.min(during.end, levels[i + 1]?.at ?? during.end);
      if (from >= during.end) break;
      // The piece's own use at its present place becomes free.
      const kept = own.from < to && from < own.to ? amount : 0;
      if ((levels[i]?.free ?? 0) + kept < amount) return false;
    }
    return true;
  }
}
