// Who is on site and when. Overrun cost, an option's plant and the account all use this.
import { addMinutes, minutesBetween, type Instant, type Interval } from '../calendar/index.js';
import type { AccessWindow, Activity, Phrase, Resource } from '../model/index.js';
import type { OnSiteRule } from '../model/price-book.js';
import { sayPrice } from './say-price.js';
import type { Placement } from '../planner/fit/types.js';

/** An amount of one resource that arrives and leaves together, and whether (and why) an overrun keeps it. */
export interface Stay {
  readonly resource: Resource;
  readonly amount: number;
  /** Call time. */
  readonly call: Instant;
  /** Finish of the last work that needs them. */
  readonly lastWork: Instant;
  /** Planned departure. */
  readonly leaves: Instant;
  /** Whether a late handback keeps them: their work is the last of the window, or the price book says they stay. */
  readonly kept: boolean;
  readonly why: Phrase;
}

export interface StayInputs {
  readonly resources: readonly Resource[];
  readonly placements?: readonly Placement[] | undefined;
  readonly activities?: readonly Activity[] | undefined;
  readonly onSite: readonly OnSiteRule[];
}

/** An amount in use over a time. */
export interface Use extends Interval {
  readonly amount: number;
}

/**
 * Everyone on site in a window. With a work plan, the k-th unit of a resource is there from the first to the last
 * moment that k are in use. Without one, all units available at the booked end are there from the start of the window
 * to handback.
 *
 * An overrun is taken to be an overrun of the work that finishes last, so it keeps only those whose work finishes then.
 * Others leave as planned, unless a rule says `leaves: at handback`.
 */
export function staysIn(window: AccessWindow, inputs: StayInputs): readonly Stay[] {
  const { placements, activities, resources, onSite } = inputs;
  if (!placements || !activities)
    return resources.flatMap((resource) => {
      const amount = capacityAtEnd(resource, window);
      if (amount === 0) return [];
      const all = { resource, amount, call: window.start, lastWork: window.end };
      return [
        byRule(
          all,
          window,
          ruleOf(onSite, resource.id, window.id),
          true,
          sayPrice('no-plan-given'),
        ),
      ];
    });
  const here = placements.filter(
    (placement) => placement.window === window.id && placement.from < placement.to,
  );
  const last = lastPiece(here);
  const byId = new Map(resources.map((resource) => [resource.id, resource]));
  return [...usesOf(here, activities)].flatMap(([id, uses]) => {
    const resource = byId.get(id) ?? { id, availability: [] };
    const rule = ruleOf(onSite, id, window.id);
    return spansOf(uses).map((span) => {
      const stay = { resource, amount: span.amount, call: span.start, lastWork: span.end };
      const sooner = last ? minutesBetween(span.end, last.to) : 0;
      const kept = sooner <= 0;
      const why = kept
        ? sayPrice('own-work-ends-last', { activity: last!.activity })
        : sayPrice('own-work-over-sooner', { minutes: sooner, activity: last!.activity });
      return byRule(stay, window, rule, kept, why);
    });
  });
}

/** The rule for a resource in a window. A rule that names the window takes precedence. */
function ruleOf(
  rules: readonly OnSiteRule[],
  resource: string,
  window: string,
): OnSiteRule | undefined {
  const own = rules.filter((rule) => rule.resource === resource);
  return (
    own.find((item) => item.window === window) ?? own.find((item) => item.window === undefined)
  );
}

function byRule(
  stay: Pick<Stay, 'resource' | 'amount' | 'call' | 'lastWork'>,
  window: AccessWindow,
  rule: OnSiteRule | undefined,
  keptByPlan: boolean,
  why: Phrase,
): Stay {
  const call = addMinutes(stay.call, -(rule?.callMinutesBefore ?? 0));
  const afterWork = addMinutes(stay.lastWork, rule?.leavesMinutesAfter ?? 0);
  if (rule?.leaves === 'at handback')
    return {
      ...stay,
      call,
      leaves: Math.max(window.end, stay.lastWork),
      kept: true,
      why: sayPrice('stays-by-price-book'),
    };
  if (rule?.leaves === 'after its work')
    return {
      ...stay,
      call,
      leaves: afterWork,
      kept: false,
      why: sayPrice('leaves-by-price-book'),
    };
  return { ...stay, call, leaves: afterWork, kept: keptByPlan, why };
}

/** The work that finishes last; of several, the one that began first. */
function lastPiece(placements: readonly Placement[]): Placement | undefined {
  return placements.reduce<Placement | undefined>(
    (last, placement) =>
      !last || placement.to > last.to || (placement.to === last.to && placement.from < last.from)
        ? placement
        : last,
    undefined,
  );
}

/** Uses of each resource, sorted by resource name. */
function usesOf(
  placements: readonly Placement[],
  activities: readonly Activity[],
): ReadonlyMap<string, readonly Use[]> {
  const byId = new Map(activities.map((activity) => [activity.id, activity]));
  const uses = new Map<string, Use[]>();
  for (const { activity, from, to } of placements)
    for (const { resource, amount } of byId.get(activity)?.resources ?? []) {
      if (amount <= 0) continue;
      const list = uses.get(resource);
      const use = { start: from, end: to, amount };
      if (list) list.push(use);
      else uses.set(resource, [use]);
    }
  return new Map([...uses].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Who is there when: the k-th unit from the first to the last moment that k are in use. */
export function spansOf(uses: readonly Use[]): readonly Use[] {
  const moments = [...new Set(uses.flatMap((use) => [use.start, use.end]))].sort((a, b) => a - b);
  const levels = moments.slice(0, -1).map((start, i) => ({
    start,
    end: moments[i + 1]!,
    amount: uses
      .filter((use) => use.start <= start && start < use.end)
      .reduce((sum, use) => sum + use.amount, 0),
  }));
  const most = Math.max(0, ...levels.map((level) => level.amount));
  const spans: { start: Instant; end: Instant; amount: number }[] = [];
  for (let k = 1; k <= most; k += 1) {
    const at = levels.filter((level) => level.amount >= k);
    const [start, end] = [at[0]!.start, at.at(-1)!.end];
    const same = spans.find((span) => span.start === start && span.end === end);
    if (same) same.amount += 1;
    else spans.push({ start, end, amount: 1 });
  }
  return spans;
}

function capacityAtEnd(resource: Resource, window: AccessWindow): number {
  return resource.availability
    .filter((row) => (row.from ?? -Infinity) < window.end && window.end <= (row.to ?? Infinity))
    .reduce((sum, row) => sum + row.capacity, 0);
}
