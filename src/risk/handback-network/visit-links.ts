import { minutesBetween } from '../../calendar/index.js';
import { boundsOf, samePlace, type Link, type Plan } from '../../model/index.js';
import { maturityCurve } from '../../rules/conditions/index.js';
import type { RiskLink } from '../kernel/network.js';
import { resourceOrder } from '../kernel/resource-order.js';
import { finishOf, type NetworkBuilder } from './network-builder.js';
import type { Visit } from './visits.js';

/** The longest that curing holds anything up, in minutes: far more than any window. */
const LONGEST_CURING = 1e6;

/**
 * Links each visit to what its activity waits for in this window: its own visit before, what its links name, what it
 * makes good, plant that another visit has before it, and the place that another visit has to itself.
 *
 * @param visits In planned order.
 * @param nodesOf Nodes of each visit, first to last.
 */
export function linkVisits(
  build: NetworkBuilder,
  visits: readonly Visit[],
  nodesOf: readonly (readonly number[])[],
): void {
  const { plan } = build;
  const curing = curingOf(plan);
  visits.forEach((visit, k) => {
    const first = nodesOf[k]![0];
    if (first !== undefined)
      build.nodes[first]!.after.push(...linksOf(visit, visits.slice(0, k), nodesOf, curing));
  });
  const order = resourceOrder(
    visits.map((visit) => ({ activity: visit.activityRow, from: visit.from, to: visit.to })),
    plan.resources,
    plan.zone,
  );
  for (const [first, then] of [...order, ...madeGoodAfter(plan, visits), ...placeOrder(visits)]) {
    const last = nodesOf[first]?.at(-1);
    const next = nodesOf[then]?.[0];
    if (last !== undefined && next !== undefined) build.nodes[next]!.after.push(finishOf(last));
  }
}

/** What makes work good and waits for it by no link: it starts once that work has finished. Pairs of indices. */
function madeGoodAfter(
  plan: Plan,
  visits: readonly Visit[],
): readonly (readonly [number, number])[] {
  return boundsOf(plan.activities).flatMap(({ activity, unlinked }) => {
    const last = visits.findLastIndex((visit) => visit.activity === activity);
    if (last < 0) return [];
    return unlinked.flatMap((id) => {
      const first = visits.findIndex((visit) => visit.activity === id);
      return first >= 0 && visits[last]!.to <= visits[first]!.from ? [[last, first] as const] : [];
    });
  });
}

/** Work that has its lines and place to itself keeps its turn there, however long things take. Pairs of indices. */
function placeOrder(visits: readonly Visit[]): readonly (readonly [number, number])[] {
  const alone = ({ activityRow }: Visit): boolean => activityRow.occupies === 'alone';
  if (!visits.some(alone)) return [];
  return visits.flatMap((visit, k) =>
    visits.flatMap((other, j) =>
      (alone(visit) || alone(other)) &&
      visit.to <= other.from &&
      samePlace(visit.activityRow, other.activityRow)
        ? [[k, j] as const]
        : [],
    ),
  );
}

/** What a visit's first node waits for among the visits before it. */
function linksOf(
  visit: Visit,
  earlier: readonly Visit[],
  nodesOf: readonly (readonly number[])[],
  curing: CuringMinutes,
): readonly RiskLink[] {
  const previous = earlier.findLastIndex((item) => item.activity === visit.activity);
  if (previous >= 0) return nodesOf[previous]!.slice(-1).map(finishOf);
  return visit.activityRow.after.flatMap((link): RiskLink[] => {
    const same = (item: Visit): boolean => item.activity === link.activity;
    const target =
      nodesOf[link.from === 'start' ? earlier.findIndex(same) : earlier.findLastIndex(same)];
    const node = link.from === 'start' ? target?.[0] : target?.at(-1);
    if (node === undefined) return [];
    const lagMinutes = link.gapMinutes + curing(link, earlier.findLast(same));
    return [{ node, from: link.from, lagMinutes }];
  });
}

type CuringMinutes = (link: Link, before: Visit | undefined) => number;

/** Curing is taken as long as it is from the planned finish. */
function curingOf({ curing }: Plan): CuringMinutes {
  const curve = curing && maturityCurve(curing);
  return (link, before) =>
    link.cured && curve && before
      ? Math.min(minutesBetween(before.to, curve.readyAt(before.to)), LONGEST_CURING)
      : 0;
}
