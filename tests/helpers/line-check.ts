// Whether placements leave the line fit to run and keep work that goes on alone to itself: asked of the plan's own rows,
// by walking the links afresh. It shares no code with the planner or with the model's reading of the columns.
import type { Activity, Plan } from '../../src/model/index.js';
import type { Placement } from '../../src/planner/fit/types.js';

type Rows = Pick<Plan, 'activities'>;

/** In words, everything that is opened and not made good, and everything that goes on where something is alone. */
export function lineFaults(plan: Rows, placements: readonly Placement[]): string[] {
  const open = plan.activities.flatMap((opener) => openFaults(plan, opener, placements));
  return [...open, ...aloneFaults(plan, placements)];
}

/** All that must be finished in the window in which an activity has begun, as the columns say. */
export function mustFollow(plan: Rows, opener: Activity): Set<string> {
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const wanted = new Set<string>();
  const asked = [opener.id];
  const met = new Set<string>(asked);
  while (asked.length > 0) {
    const row = rows.get(asked.shift()!)!;
    if (row.place === 'outside' || row.madeGoodBy === undefined || row.madeGoodBy === 'none')
      continue;
    for (const target of row.madeGoodBy) {
      if (rows.get(target)?.place !== 'inside' || target === row.id) continue;
      for (const id of [target, ...onTheWay(plan, row.id, target)])
        if (id !== opener.id && rows.get(id)!.place === 'inside') {
          wanted.add(id);
          if (!met.has(id)) asked.push(id);
          met.add(id);
        }
    }
  }
  return wanted;
}

/** Activities on some chain of links from one to another, by going forward from the first and asking each for the last. */
function onTheWay(plan: Rows, from: string, to: string): string[] {
  const waitsFor = (id: string, target: string, seen: Set<string>): boolean => {
    if (id === target) return true;
    if (seen.has(id)) return false;
    seen.add(id);
    const row = plan.activities.find((activity) => activity.id === id);
    return row?.after.some((link) => waitsFor(link.activity, target, seen)) ?? false;
  };
  return plan.activities.flatMap(({ id }) =>
    id !== from && id !== to && waitsFor(id, from, new Set()) && waitsFor(to, id, new Set())
      ? [id]
      : [],
  );
}

function leftOf({ work }: Activity): number {
  return work.kind === 'whole' ? 1 : work.units - work.done;
}

/** In words, what is not made good of what one activity opens. */
export function openFaults(
  plan: Rows,
  opener: Activity,
  placements: readonly Placement[],
): string[] {
  const faults: string[] = [];
  if (opener.place === 'outside' || !Array.isArray(opener.madeGoodBy)) return faults;
  const own = placements.filter((placement) => placement.activity === opener.id);
  if (leftOf(opener) === 0) {
    // Done before: what makes it good goes together, all of it or nothing.
    const rest = [...mustFollow(plan, opener)].filter(
      (id) => leftOf(plan.activities.find((activity) => activity.id === id)!) > 0,
    );
    const pieces = placements.filter((placement) => rest.includes(placement.activity));
    const short = rest.filter(
      (id) =>
        pieces.reduce(
          (sum, placement) => sum + (placement.activity === id ? (placement.units ?? 1) : 0),
          0,
        ) < leftOf(plan.activities.find((activity) => activity.id === id)!),
    );
    if (
      pieces.length > 0 &&
      (short.length > 0 || new Set(pieces.map((piece) => piece.window)).size > 1)
    )
      faults.push(`${opener.id} was done before and is not made good in one window`);
    return faults;
  }
  if (own.length === 0) return faults;
  const units = own.reduce((sum, placement) => sum + (placement.units ?? 1), 0);
  // Repeated work is made safe at every stop; its last unit opens the line.
  if (opener.work.kind === 'units' && units < leftOf(opener)) return faults;
  const last = own.reduce((latest, placement) => (placement.to > latest.to ? placement : latest));
  for (const id of mustFollow(plan, opener)) {
    const member = plan.activities.find((activity) => activity.id === id)!;
    if (leftOf(member) === 0) continue;
    const there = placements.filter((placement) => placement.activity === id);
    const done = there
      .filter((placement) => placement.window === last.window)
      .reduce((sum, placement) => sum + (placement.units ?? 1), 0);
    if (done < leftOf(member) || there.some((placement) => placement.window !== last.window))
      faults.push(`${opener.id} is begun in ${last.window} and ${id} is not finished there`);
    if (
      (opener.madeGoodBy as readonly string[]).includes(id) &&
      !reaches(plan, id, opener.id) &&
      there.some((placement) => placement.from < last.to)
    )
      faults.push(`${id} begins before ${opener.id}, which it makes good, is over`);
  }
  return faults;
}

/** Whether one activity waits for another by links. */
function reaches(plan: Rows, id: string, target: string): boolean {
  return onTheWayOrNext(plan, id, target, new Set());
}

function onTheWayOrNext(plan: Rows, id: string, target: string, seen: Set<string>): boolean {
  if (seen.has(id)) return false;
  seen.add(id);
  const row = plan.activities.find((activity) => activity.id === id);
  return (
    row?.after.some(
      (link) => link.activity === target || onTheWayOrNext(plan, link.activity, target, seen),
    ) ?? false
  );
}

/** The rows, each with links to what it makes good and waits for by no chain. */
export function withOwnLinks(activities: readonly Activity[]): Activity[] {
  const plan = { activities };
  return activities.map((row) => {
    const more = activities.filter(
      (opener) =>
        opener.place === 'inside' &&
        row.place === 'inside' &&
        opener.id !== row.id &&
        Array.isArray(opener.madeGoodBy) &&
        (opener.madeGoodBy as readonly string[]).includes(row.id) &&
        !reaches(plan, row.id, opener.id),
    );
    const links = more.map(({ id }) => ({ activity: id, from: 'finish', gapMinutes: 0 }) as const);
    return links.length === 0 ? row : { ...row, after: [...row.after, ...links] };
  });
}

/** Whether two rows need a line and a stretch of it in common: blank means all. */
export function meet(activity: Activity, other: Activity): boolean {
  if (activity.place === 'outside' || other.place === 'outside') return false;
  const onLine = [...activity.lines, ...other.lines];
  const lineInCommon =
    activity.lines.length * other.lines.length === 0 ||
    onLine.some((line) => activity.lines.includes(line) && other.lines.includes(line));
  const [a, b] = [activity.extent, other.extent];
  const same = a && b && a.from === b.from && a.to === b.to;
  const apart = a && b && !same ? a.to <= b.from || b.to <= a.from : false;
  return lineInCommon && !apart;
}

function aloneFaults(plan: Rows, placements: readonly Placement[]): string[] {
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return placements.flatMap((placement, i) =>
    placements.flatMap((other, j) => {
      const [a, b] = [rows.get(placement.activity)!, rows.get(other.activity)!];
      if (i === j || a === b || a.occupies !== 'alone' || !meet(a, b)) return [];
      const both = Math.min(placement.to, other.to) - Math.max(placement.from, other.from);
      return both > 0 ? [`${b.id} goes on where ${a.id} is alone`] : [];
    }),
  );
}
