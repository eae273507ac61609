// Who is on site, from when to when: the one reckoning behind an overrun, an option's plant and the account.
import { addMinutes, minutesBetween, type Instant, type Interval } from '../calendar/index.js';
import {
  because,
  type AccessWindow,
  type Activity,
  type Reasoned,
  type Resource,
  type Worded,
} from '../model/index.js';
import type { OnSiteRule } from '../model/price-book.js';
import { sayPrice } from './price-sentences.js';
import type { Placement } from '../planner/fit/types.js';

/** So many of a resource that come and go together, and how it is known whether an overrun keeps them. */
export interface Stay extends Reasoned {
  readonly resource: Resource;
  readonly amount: number;
  /** When they are called to the site. */
  readonly call: Instant;
  /** When the last work that needs them ends. */
  readonly lastWork: Instant;
  /** When they leave as planned. */
  readonly leaves: Instant;
  /** A late handback keeps them: their own last work is the last of the window, or they stay by the price book. */
  readonly kept: boolean;
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
 * Everyone on site in a window. With a plan of the work: the k-th of a resource from the first moment that k are in use to
 * the last. Without one: all there is of each resource at the booked end, from the start of the window to handback.
 *
 * An overrun is one of the work that ends last: only those whose own work ends with it are kept. Whoever works beside it and is
 * done sooner leaves as planned, because nothing says that the overrun is theirs; a rule `leaves: at handback` keeps them.
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
          sayPrice('no-plan-given', {}),
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

/** The rule for one resource in one window: one that names the window goes before one that does not. */
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
  why: Worded,
): Stay {
  const call = addMinutes(stay.call, -(rule?.callMinutesBefore ?? 0));
  const afterWork = addMinutes(stay.lastWork, rule?.leavesMinutesAfter ?? 0);
  if (rule?.leaves === 'at handback')
    return {
      ...stay,
      call,
      leaves: Math.max(window.end, stay.lastWork),
      kept: true,
      ...because(sayPrice('stays-by-price-book', {})),
    };
  if (rule?.leaves === 'after its work')
    return {
      ...stay,
      call,
      leaves: afterWork,
      kept: false,
      ...because(sayPrice('leaves-by-price-book', {})),
    };
  return { ...stay, call, leaves: afterWork, kept: keptByPlan, ...because(why) };
}

/** The piece of work that ends last; of several the one that began first. */
function lastPiece(placements: readonly Placement[]): Placement | undefined {
  return placements.reduce<Placement | undefined>(
    (last, placement) =>
      !last || placement.to > last.to || (placement.to === last.to && placement.from < last.from)
        ? placement
        : last,
    undefined,
  );
}

/** What is in use of each resource, in the order of their names. */
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

/** How many are there over each stretch: the k-th from the first moment that k are in use to the last. */
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
