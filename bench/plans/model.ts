// A problem of the planner as a model of the peer: the same tasks, usable time, links, resources, and windows that hold
// together what makes the line good.
import {
  copyOf,
  visitMinutes,
  type Problem,
  type Profile,
  type Slot,
  type Task,
  type Visit,
} from '../../src/planner/fit/index.js';
import {
  FAR,
  type Expression,
  type Interval,
  type Library,
  type Literal,
  type Model,
} from './cp-sat.js';
import { bindBlocks } from './model-blocks.js';

/** Variables of one task. */
export interface Placed {
  readonly task: Task;
  /** First start and last end. */
  readonly start: Expression;
  readonly end: Expression;
  /** All of it is placed; absent where it must be. */
  readonly present: Literal | undefined;
  /** Some of it is placed: of repeated work some units, else all; absent where all must be. */
  readonly begun: Literal | undefined;
  readonly parts: readonly Part[];
}

/** One visit that may be. */
export interface Part {
  readonly start: Expression;
  readonly size: number | Expression;
  /** Where the size is not fixed, the end. */
  readonly over?: Expression;
  readonly present: Literal | undefined;
  readonly units: number | Expression;
  /** Absent for a whole piece of work, which may be in any. */
  readonly slot: Slot | undefined;
}

export interface PeerModel {
  readonly model: Model;
  readonly placed: readonly Placed[];
  /** Tasks left out, less those that can be left out. */
  readonly out: Expression;
  /** Units left out, less a constant. */
  readonly unitsOut: Expression;
  readonly late: Expression;
  readonly finish: Expression;
  /** What a hint is given for. */
  readonly variables: readonly Expression[];
  constant(value: number): Expression;
  sumOf(all: readonly Expression[]): Expression;
}

export interface ModelOptions {
  /** All work must be placed, which is known to be possible; else as much as can be. */
  readonly everything: boolean;
  /** Each task is finished by its own date. */
  readonly dated?: boolean;
  /** Visits of repeated work in one stretch of usable time; 1 without. */
  readonly visits?: number;
}

export function modelOf(
  { CpModel, Domain }: Library,
  problem: Problem,
  { everything, dated = false, visits = 1 }: ModelOptions,
): PeerModel {
  const model = new CpModel();
  const constant = (value: number): Expression => model.newIntVar(value, value);
  const sumOf = (all: readonly Expression[]): Expression =>
    all.reduce((total, each) => total.plus(each), constant(0));
  const placed = problem.tasks.flatMap((task): Placed[] => {
    if (task.units === 1) {
      const size = visitMinutes(task, 1);
      const starts = startsOf(task, size);
      if (starts.length === 0) return [];
      const start = model.newIntVarFromDomain(Domain.fromIntervals(starts));
      const present = everything ? undefined : model.newBoolVar();
      const part: Part = { start, size, present, units: 1, slot: undefined };
      return [{ task, start, end: start.plus(size), present, begun: present, parts: [part] }];
    }
    const present = everything ? undefined : model.newBoolVar();
    const begun = everything ? undefined : model.newBoolVar();
    const end = model.newIntVar(-FAR, FAR);
    const first = model.newIntVar(-FAR, FAR);
    const parts = task.slots.flatMap((slot): Part[] => {
      const low = Math.max(slot.start, task.earliest);
      const most = Math.min(
        task.units,
        Math.floor((slot.end - low - task.setUp - task.makeSafe) / task.perUnit),
      );
      return most < 1
        ? []
        : Array.from({ length: Math.min(visits, most) }, () =>
            visitOf(model, task, { ...slot, start: low }, most, { first, end }),
          );
    });
    if (parts.length === 0) return [];
    if (visits > 1) apart(model, parts);
    const sum = sumOf(parts.map(({ units }) => units as Expression));
    if (present && begun) {
      model.addLinearConstraint(sum.minus(present.times(task.units)), 0, task.units);
      model.addLinearConstraint(sum.minus(begun.times(task.units)), -task.units, 0);
      model.addLinearConstraint(sum.minus(begun), 0, task.units);
    } else model.addLinearConstraint(sum, task.units, task.units);
    if (task.after.some((tie) => tie.fromStart)) oneIsFirst(model, first, parts, begun);
    return [{ task, start: first, end, present, begun, parts }];
  });
  const of = new Map(placed.map((each) => [each.task.index, each]));

  // What cannot be placed at all takes what waits for it along.
  for (const { task, start, end, begun } of placed) {
    if (dated && Number.isFinite(task.due)) {
      const by = model.addLinearConstraint(end, -FAR, task.due);
      if (begun) by.onlyEnforceIf(begun);
    }
    for (const tie of task.before) {
      const other = of.get(tie.task);
      if (tie.cure) throw new Error('curing is not given to the peer');
      if (!other) {
        if (begun) model.addLinearConstraint(begun, 0, 0);
        continue;
      }
      const from = tie.fromStart ? other.start : other.end;
      const gap = model.addLinearConstraint(start.minus(from), tie.gap, 2 * FAR);
      if (begun) gap.onlyEnforceIf(begun);
      const known = tie.fromStart ? other.begun : other.present;
      if (begun && known) model.addImplication(begun, known);
    }
  }
  addSupplies(model, problem, placed);
  bindBlocks(model, problem, of);

  const lates = problem.dues.map(({ due, tasks }) => {
    const late = model.newIntVar(0, FAR);
    for (const index of tasks) {
      const each = of.get(index);
      if (!each) continue;
      const bound = model.addLinearConstraint(late.minus(each.end), -due, 2 * FAR);
      if (each.begun) bound.onlyEnforceIf(each.begun);
    }
    return late;
  });
  const finish = model.newIntVar(-FAR, FAR);
  for (const { end, begun } of placed) {
    const bound = model.addLinearConstraint(finish.minus(end), 0, 2 * FAR);
    if (begun) bound.onlyEnforceIf(begun);
  }
  const variables: Expression[] = placed.flatMap(({ start, end, present, begun, parts, task }) => [
    ...(task.units === 1 ? [start] : [start, end]),
    ...(present ? [present] : []),
    ...(begun && begun !== present ? [begun] : []),
    ...(task.units === 1
      ? []
      : parts.flatMap((part) => [
          part.start,
          part.size as Expression,
          part.present!,
          part.units as Expression,
        ])),
  ]);
  return {
    model,
    placed,
    out: sumOf(placed.flatMap(({ present }) => (present ? [present.times(-1)] : []))),
    unitsOut: sumOf(
      placed.flatMap(({ present, parts }) =>
        present
          ? parts.map(({ units }) => (typeof units === 'number' ? present : units).times(-1))
          : [],
      ),
    ),
    late: sumOf(lates),
    finish,
    variables,
    constant,
    sumOf,
  };
}

/** A visit of repeated work in one stretch of time. */
function visitOf(
  model: Model,
  task: Task,
  slot: Slot,
  most: number,
  { first, end }: Record<'first' | 'end', Expression>,
): Part {
  const here = model.newBoolVar();
  const units = model.newIntVar(0, most);
  const start = model.newIntVar(slot.start, slot.end - visitMinutes(task, 1));
  const size = model.newIntVar(0, visitMinutes(task, most));
  const fixed = task.setUp + task.makeSafe;
  model.addLinearConstraint(units, 1, most).onlyEnforceIf(here);
  model.addLinearConstraint(units, 0, 0).onlyEnforceIf(here.not());
  model
    .addLinearConstraint(size.minus(units.times(task.perUnit)), fixed, fixed)
    .onlyEnforceIf(here);
  model.addLinearConstraint(start.plus(size), slot.start, slot.end).onlyEnforceIf(here);
  model.addLinearConstraint(end.minus(start).minus(size), 0, 2 * FAR).onlyEnforceIf(here);
  model.addLinearConstraint(start.minus(first), 0, 2 * FAR).onlyEnforceIf(here);
  const over = model.newIntVar(-FAR, FAR);
  model.addLinearConstraint(over.minus(start).minus(size), 0, 0);
  return { start, size, over, present: here, units, slot };
}

/** Visits of one piece of work do not overlap. */
function apart(model: Model, parts: readonly Part[]): void {
  const intervals = parts.map(({ start, size, over, present }) =>
    model.newOptionalIntervalVar(start, size as Expression, over!, present!),
  );
  model.addCumulative(intervals, Array(intervals.length).fill(1) as number[], 1);
}

/** The first start is that of a visit, and not before them all. */
function oneIsFirst(
  model: Model,
  first: Expression,
  parts: readonly Part[],
  begun: Literal | undefined,
): void {
  const firsts = parts.map(({ start, present: here }) => {
    const is = model.newBoolVar();
    model.addImplication(is, here!);
    model.addLinearConstraint(first.minus(start), 0, 2 * FAR).onlyEnforceIf(is);
    return is;
  });
  const none = model.newBoolVar();
  if (begun) model.addImplication(begun, none.not());
  else model.addLinearConstraint(none, 0, 0);
  model.addExactlyOne([...firsts, none]);
}

function addSupplies(model: Model, problem: Problem, placed: readonly Placed[]): void {
  problem.supplies.forEach(({ profile }, supply) => {
    const intervals: Interval[] = [];
    const demands: number[] = [];
    for (const { task, parts } of placed) {
      const amount = task.demands.find((need) => need.supply === supply)?.amount;
      if (amount === undefined) continue;
      for (const { start, size, over, present } of parts) {
        intervals.push(
          typeof size !== 'number'
            ? model.newOptionalIntervalVar(start, size, over!, present!)
            : present
              ? model.newOptionalFixedSizeIntervalVar(start, size, present)
              : model.newFixedSizeIntervalVar(start, size),
        );
        demands.push(amount);
      }
    }
    if (intervals.length === 0) return;
    const { capacity, taken } = levelsOf(copyOf(profile));
    for (const { start, end, amount } of taken) {
      intervals.push(model.newFixedSizeIntervalVar(start, end - start));
      demands.push(amount);
    }
    model.addCumulative(intervals, demands, capacity);
  });
}

/** The starts from which one visit ends in the same slot, joined. */
function startsOf(task: Task, size: number): [number, number][] {
  const starts: [number, number][] = [];
  for (const slot of task.slots) {
    const low = Math.max(slot.start, task.earliest);
    const high = slot.end - size;
    if (low > high) continue;
    const last = starts.at(-1);
    if (last && low <= last[1] + 1) last[1] = Math.max(last[1], high);
    else starts.push([low, high]);
  }
  return starts;
}

/** A resource that varies, as its highest level and work that takes the rest. */
function levelsOf({ at, free }: Profile): {
  readonly capacity: number;
  readonly taken: readonly { start: number; end: number; amount: number }[];
} {
  const capacity = Math.max(...free);
  const taken = free.flatMap((level, i) => {
    const [start, end] = [Math.max(-FAR, at[i]!), Math.min(FAR, at[i + 1] ?? FAR)];
    return level < capacity && start < end ? [{ start, end, amount: capacity - level }] : [];
  });
  return { capacity, taken };
}

/** What the peer's values come to. */
export function visitsOf(
  problem: Problem,
  placed: readonly Placed[],
  valueOf: (expression: Expression | number) => number,
): Visit[] {
  return placed.flatMap(({ task, parts, begun }): Visit[] => {
    if (begun && valueOf(begun) === 0) return [];
    return parts.flatMap((part): Visit[] => {
      if (part.present && valueOf(part.present) === 0) return [];
      const start = valueOf(part.start);
      const end = start + valueOf(part.size);
      const units = valueOf(part.units);
      const slot = part.slot ?? task.slots.find((item) => item.start <= start && end <= item.end);
      return [{ task: task.index, window: slot!.window, start, end, units }];
    });
  });
}
