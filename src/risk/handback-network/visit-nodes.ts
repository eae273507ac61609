import type { IntervalSet } from '../../calendar/index.js';
import { needsOf } from '../../model/index.js';
import { isolationOpens } from '../../rules/index.js';
import { constant, type Distribution } from '../kernel/distribution.js';
import type { RiskLink } from '../kernel/network.js';
import { capacityAt } from '../kernel/resource-order.js';
import { finishOf, type NetworkBuilder, type NodeMeaning } from './network-builder.js';
import type { Visit } from './visits.js';

/**
 * A visit's nodes, first to last.
 *
 * @param stops When such work may not go on.
 */
export function visitNodes(
  build: NetworkBuilder,
  visit: Visit,
  unitsBefore: number,
  after: readonly RiskLink[],
  stops: IntervalSet,
): readonly number[] {
  const { work, title, id } = visit.activityRow;
  const of = { kind: 'work', name: title, activity: id, plannedStart: visit.from } as const;
  const made: number[] = [];
  const next = (meaning: NodeMeaning, duration: Distribution): void => {
    const previous = made.at(-1);
    made.push(build.add(meaning, duration, previous === undefined ? after : [finishOf(previous)]));
  };
  if (work.kind === 'whole') {
    const { low, high } = work.spread ?? {};
    next({ ...of, part: 'whole', minutes: work.minutes }, build.spread(work.minutes, low, high));
  } else {
    const { plannedStart: _, ...later } = of;
    const { low, high } = work.spread ?? {};
    const perUnit = build.spread(work.minutesPerUnit, low, high);
    if (work.setUpMinutes > 0)
      next({ ...of, part: 'set-up', minutes: work.setUpMinutes }, constant(work.setUpMinutes));
    for (let k = 1; k <= (visit.units ?? work.units - work.done); k += 1)
      next(
        {
          ...(made.length === 0 ? of : later),
          part: 'unit',
          unit: unitsBefore + k,
          minutes: work.minutesPerUnit,
        },
        perUnit,
      );
    if (work.makeSafeMinutes > 0)
      next(
        { ...later, part: 'make-safe', minutes: work.makeSafeMinutes },
        constant(work.makeSafeMinutes),
      );
  }
  const closed = stops.map(({ start, end }) => ({
    from: build.minutesAt(start),
    to: build.minutesAt(end),
  }));
  for (const index of made) if (closed.length > 0) build.nodes[index]!.closed = closed;
  const events = build.events((event) => event.activity === id);
  const bearer = made.find((index) => build.meanings[index]!.part !== 'set-up');
  if (events.length > 0 && bearer !== undefined && unitsBefore === 0)
    build.nodes[bearer]!.events = events;
  if (made[0] !== undefined) build.nodes[made[0]]!.releaseMinutes = releaseOf(build, visit);
  return made;
}

/** Not before its own date, its isolation, or plant that comes later than the window opens. */
function releaseOf(build: NetworkBuilder, visit: Visit): number {
  const { activityRow: activity, from } = visit;
  const { plan, window, options } = build;
  const late = activity.resources.some(({ resource, amount }) => {
    const row = plan.resources.find((item) => item.id === resource);
    return row !== undefined && capacityAt(row, window.start, plan.zone) < amount;
  });
  const held = late || options.holdPlannedStarts;
  return Math.max(
    0,
    build.minutesAt(isolationOpens(window, needsOf(activity), plan.rules)),
    activity.notBefore === undefined ? 0 : build.minutesAt(activity.notBefore),
    held ? build.minutesAt(from) : 0,
  );
}
