import { minutesBetween, type Instant } from '../../calendar/index.js';
import type { Placement, Plan } from '../../model/index.js';
import { availableAt } from '../../planner/repair/breaches.js';

/** People or plant that the work of a stretch of time takes. */
export interface Wanted {
  readonly resource: string;
  /** Most at once. */
  readonly peak: number;
  /** When that is first so. */
  readonly peakAt: Instant;
  /** How much there is then; null where the resource is not listed, and so is taken as unlimited. */
  readonly held: number | null;
  /** Amount times minutes, of the work as far as it lies in the stretch. */
  readonly minutes: number;
  /** Where it is wanted, in order of time; `outside` for work that needs no window. */
  readonly windows: readonly string[];
  /** Activities that want it, in order of time. */
  readonly activities: readonly string[];
}

interface Use extends Placement {
  readonly amount: number;
}

/** What some placements take of each resource, those most used first. */
export function wantedOf(
  plan: Plan,
  placed: readonly Placement[],
  within: { readonly from: Instant; readonly to: Instant },
): readonly Wanted[] {
  const uses = new Map<string, Use[]>();
  const needs = new Map(plan.activities.map((activity) => [activity.id, activity.resources]));
  for (const placement of placed) {
    const from = Math.max(placement.from, within.from);
    const to = Math.min(placement.to, within.to);
    if (to <= from) continue;
    for (const { resource, amount } of needs.get(placement.activity) ?? []) {
      const own = uses.get(resource) ?? [];
      own.push({ ...placement, from, to, amount });
      uses.set(resource, own);
    }
  }
  return [...uses]
    .map(([resource, own]) => wanted(plan, resource, own))
    .sort((a, b) => b.minutes - a.minutes || (a.resource < b.resource ? -1 : 1));
}

function wanted(plan: Plan, resource: string, uses: readonly Use[]): Wanted {
  const listed = plan.resources.find((item) => item.id === resource);
  let peak = 0;
  let peakAt = uses[0]!.from;
  // Nothing begins between two starts, so the most at once is at one of them.
  for (const { from } of uses.toSorted((a, b) => a.from - b.from)) {
    const going = uses.filter((use) => use.from <= from && use.to > from);
    const sum = going.reduce((all, use) => all + use.amount, 0);
    if (sum > peak) [peak, peakAt] = [sum, from];
  }
  return {
    resource,
    peak,
    peakAt,
    held: listed ? availableAt(listed, peakAt, plan.zone) : null,
    minutes: uses.reduce((all, use) => all + use.amount * minutesBetween(use.from, use.to), 0),
    windows: [...new Set(uses.map((use) => use.window ?? 'outside'))],
    activities: [...new Set(uses.map((use) => use.activity))],
  };
}
