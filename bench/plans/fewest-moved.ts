// The peer's least: how few pieces of a plan must leave their windows for as much to be placed, as little late of the
// dates that the plan kept.
import type { Problem, Visit } from '../../src/planner/fit/index.js';
import { cpSat, type Expression, type Literal, type Model } from './cp-sat.js';
import { solveInOrder } from './in-order.js';
import { modelOf, visitsOf, type Placed } from './model.js';

/** A piece of the plan before: units of a task in a window; undefined where that is gone. */
export interface Was {
  readonly task: number;
  readonly window: number | undefined;
  readonly units: number;
}

export interface FewestMoved {
  readonly visits: readonly Visit[];
  readonly out: number;
  readonly late: number;
  /** Pieces that leave their windows; absent where there was no time. */
  readonly moved: number | undefined;
  /** No fewer do, in a plan as good. */
  readonly atLeast: number;
  readonly proven: boolean;
  readonly cpuSeconds: number;
}

export interface Known {
  /** A plan to begin with. */
  readonly visits: readonly Visit[];
  /** It places everything and keeps every date: no plan is better in that. */
  readonly whole: boolean;
}

/** @param problem With the dates that must be kept as its dues. Outside pieces are not given. */
export async function fewestMoved(
  problem: Problem,
  was: readonly Was[],
  known: Known,
  seconds: number,
): Promise<FewestMoved> {
  const library = await cpSat();
  const peer = modelOf(library, problem, { everything: known.whole, visits: 2 });
  if (known.whole) peer.model.addLinearConstraint(peer.late, 0, 0);
  for (const [variable, value] of hintOf(peer.placed, known.visits))
    peer.model.addHint(variable, value);
  let visits: Visit[] = [];
  const moves = (): Expression => movedIn(peer.model, peer.placed, was, peer.sumOf);
  const goals = [
    ...(known.whole
      ? []
      : [
          { name: 'out', valueOf: () => peer.out, share: 0.3 },
          { name: 'late', valueOf: () => peer.late, share: 0.5 },
        ]),
    { name: 'moved', valueOf: moves, share: 1 },
  ];
  const { reached, cpuSeconds } = await solveInOrder(library, peer, goals, seconds, (of) => {
    visits = visitsOf(problem, peer.placed, of);
  });
  const value = (name: string): number | undefined =>
    reached.find((each) => each.name === name)?.value;
  const moved = reached.find(({ name }) => name === 'moved');
  const settled = reached.every(({ name, proven }) => name === 'moved' || proven);
  return {
    visits,
    out: known.whole ? 0 : problem.tasks.length + (value('out') ?? 0),
    late: value('late') ?? 0,
    moved: moved?.value,
    atLeast: settled ? Math.max(0, moved?.bound ?? 0) : 0,
    proven: moved?.proven ?? false,
    cpuSeconds,
  };
}

/** A plan as values of the peer's variables. */
function hintOf(placed: readonly Placed[], visits: readonly Visit[]): [Expression, number][] {
  return placed.flatMap(({ task, parts, start, present, begun, end }): [Expression, number][] => {
    const own = visits.filter((visit) => visit.task === task.index);
    const left = own.reduce((units, visit) => units - visit.units, task.units);
    const hints: [Expression, number][] = [];
    if (present) hints.push([present, Number(left <= 0)]);
    if (begun && begun !== present) hints.push([begun, Number(own.length > 0)]);
    if (own.length === 0) return hints;
    if (task.units === 1) return own[0] ? [...hints, [start, own[0].start]] : hints;
    hints.push([start, Math.min(...own.map((visit) => visit.start))]);
    hints.push([end, Math.max(...own.map((visit) => visit.end))]);
    const rest = [...own];
    for (const { slot, start: from, size, units, present: here } of parts) {
      const at = rest.findIndex((item) => slot!.start <= item.start && item.end <= slot!.end);
      const [visit] = at < 0 ? [] : rest.splice(at, 1);
      hints.push([here!, visit ? 1 : 0], [units as Expression, visit?.units ?? 0]);
      if (visit) hints.push([from, visit.start], [size as Expression, visit.end - visit.start]);
    }
    return hints;
  });
}

function movedIn(
  model: Model,
  placed: readonly Placed[],
  was: readonly Was[],
  sumOf: (all: readonly Expression[]) => Expression,
): Expression {
  const of = new Map(placed.map((each) => [each.task.index, each]));
  const stays = new Map<string, { stay: Literal; units: number }[]>();
  for (const { task, window, units } of was) {
    const own = of.get(task);
    if (!own || window === undefined) continue;
    const key = `${task} ${window}`;
    stays.set(key, [...(stays.get(key) ?? []), { stay: model.newBoolVar(), units }]);
  }
  for (const [key, some] of stays) {
    const [task, window] = key.split(' ').map(Number) as [number, number];
    const { parts, task: one, present } = of.get(task)!;
    if (one.units > 1) {
      const there = parts.flatMap(({ slot, units }) =>
        slot!.window === window ? [units as Expression] : [],
      );
      const wanted = sumOf(some.map(({ stay, units }) => stay.times(units)));
      model.addLinearConstraint(sumOf(there).minus(wanted), 0, 1_000_000);
      continue;
    }
    const { start, size } = parts[0]!;
    const slots = one.slots.flatMap((slot): Literal[] => {
      const low = Math.max(slot.start, one.earliest);
      const high = slot.end - (size as number);
      if (slot.window !== window || low > high) return [];
      const here = model.newBoolVar();
      model.addLinearConstraint(start, low, high).onlyEnforceIf(here);
      return [here];
    });
    for (const { stay } of some) {
      if (present) model.addImplication(stay, present);
      model.addLinearConstraint(sumOf(slots).minus(stay), 0, 1_000_000);
    }
  }
  const kept = [...stays.values()].flat().map(({ stay }) => stay);
  return sumOf(kept.map((stay) => stay.times(-1))).plus(was.length);
}
