// The peer of the bench of plans: a general constraint solver (CP-SAT of OR-Tools, in WebAssembly), used by its documented
// calls alone. It is given the same tasks, usable time, links and resources, and the same objectives one after another.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  copyOf,
  visitMinutes,
  type Problem,
  type Profile,
  type Slot,
  type Task,
  type Visit,
} from '../../src/planner/fit/index.js';

/** What the bench uses of the library. */
interface Expression {
  plus(other: Expression | number): Expression;
  minus(other: Expression | number): Expression;
  times(by: number): Expression;
}
interface Literal extends Expression {
  not(): Literal;
}
interface Constraint {
  onlyEnforceIf(...literals: Literal[]): Constraint;
}
type Interval = object;
interface Model {
  newIntVar(low: number, high: number, name?: string): Expression;
  newIntVarFromDomain(domain: object, name?: string): Expression;
  newBoolVar(name?: string): Literal;
  addLinearConstraint(expression: Expression, low: number, high: number): Constraint;
  addExactlyOne(literals: Literal[]): Constraint;
  addImplication(from: Literal, to: Literal): Constraint;
  newFixedSizeIntervalVar(start: Expression | number, size: number): Interval;
  newOptionalFixedSizeIntervalVar(start: Expression, size: number, present: Literal): Interval;
  newOptionalIntervalVar(
    start: Expression,
    size: Expression,
    end: Expression,
    present: Literal,
  ): Interval;
  addCumulative(intervals: Interval[], demands: number[], capacity: number): Constraint;
  addHint(variable: Expression, value: number): void;
  proto(): { solutionHint?: { vars: number[]; values: number[] } };
  minimize(expression: Expression): void;
}
interface Solver {
  solve(model: Model, parameters: Record<string, unknown>): Promise<unknown>;
  statusName(): string;
  value(expression: Expression | number): number;
  bestObjectiveBound(): number;
  /** Its own measure of work; about a second each. */
  readonly deterministic_time: number;
}
interface Library {
  CpModel: new () => Model;
  CpSolver: new () => Solver;
  Domain: { fromIntervals(intervals: readonly (readonly [number, number])[]): object };
}

const FAR = 10_000_000;

let library: Library | undefined;

/** The library, installed from `bench/package.json` where it is not there. */
export async function cpSat(): Promise<Library> {
  if (library) return library;
  // `bench/run.mjs` runs each bench in the root of the repository.
  const folder = resolve('bench');
  if (!existsSync(`${folder}/node_modules/or-tools-wasm`)) {
    const quiet = ['--no-audit', '--no-fund', '--ignore-scripts', '--no-package-lock', '--silent'];
    execFileSync('npm', ['i', '--prefix', folder, ...quiet], { stdio: 'inherit' });
  }
  const path = createRequire(`${folder}/package.json`).resolve('or-tools-wasm/cp-sat');
  library = (await import(pathToFileURL(path).href)) as Library;
  return library;
}

/** Minutes late, last finish and windows in use, in this order; what it left out comes before them. */
export interface PeerAnswer {
  readonly visits: readonly Visit[];
  readonly unplaced: number;
  /** Leading values of late, finish, windows that it proved. */
  readonly proven: number;
  /** No plan that places as much is less late. */
  readonly leastLate: number;
  readonly cpuSeconds: number;
}

const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Variables of one task. */
interface Placed {
  readonly task: Task;
  /** First start and last end. */
  readonly start: Expression;
  readonly end: Expression;
  readonly present: Literal | undefined;
  readonly parts: readonly Part[];
}
/** One visit that may be. */
interface Part {
  readonly start: Expression;
  readonly size: number | Expression;
  /** Where the size is not fixed, the end. */
  readonly over?: Expression;
  readonly present: Literal | undefined;
  readonly units: number | Expression;
  readonly slot: Slot | undefined;
}

/**
 * @param everything All work must be placed, which is known to be possible; else as much as can be.
 * @param seconds Processor time for all, as near as its own measure of work comes to it.
 */
export async function solvePeer(
  problem: Problem,
  { seconds, everything }: { readonly seconds: number; readonly everything: boolean },
): Promise<PeerAnswer> {
  const { CpModel, CpSolver, Domain } = await cpSat();
  const began = cpu();
  const model = new CpModel();
  const constant = (value: number): Expression => model.newIntVar(value, value);
  const placed = problem.tasks.flatMap((task): Placed[] => {
    if (task.units === 1) {
      const size = visitMinutes(task, 1);
      const starts = startsOf(task, size);
      if (starts.length === 0) return [];
      const start = model.newIntVarFromDomain(Domain.fromIntervals(starts));
      const present = everything ? undefined : model.newBoolVar();
      const part: Part = { start, size, present, units: 1, slot: undefined };
      return [{ task, start, end: start.plus(size), present, parts: [part] }];
    }
    const present = everything ? undefined : model.newBoolVar();
    const end = model.newIntVar(-FAR, FAR);
    const first = model.newIntVar(-FAR, FAR);
    const parts = task.slots.flatMap((slot): Part[] => {
      const low = Math.max(slot.start, task.earliest);
      const most = Math.min(
        task.units,
        Math.floor((slot.end - low - task.setUp - task.makeSafe) / task.perUnit),
      );
      if (most < 1) return [];
      const here = model.newBoolVar();
      const units = model.newIntVar(0, most);
      const start = model.newIntVar(low, slot.end - visitMinutes(task, 1));
      const size = model.newIntVar(0, visitMinutes(task, most));
      model.addLinearConstraint(units, 1, most).onlyEnforceIf(here);
      model.addLinearConstraint(units, 0, 0).onlyEnforceIf(here.not());
      model
        .addLinearConstraint(
          size.minus(units.times(task.perUnit)),
          task.setUp + task.makeSafe,
          task.setUp + task.makeSafe,
        )
        .onlyEnforceIf(here);
      model.addLinearConstraint(start.plus(size), low, slot.end).onlyEnforceIf(here);
      model.addLinearConstraint(end.minus(start).minus(size), 0, 2 * FAR).onlyEnforceIf(here);
      model.addLinearConstraint(start.minus(first), 0, 2 * FAR).onlyEnforceIf(here);
      const over = model.newIntVar(-FAR, FAR);
      model.addLinearConstraint(over.minus(start).minus(size), 0, 0);
      return [{ start, size, over, present: here, units, slot }];
    });
    if (parts.length === 0) return [];
    const sum = parts
      .map(({ units }) => units as Expression)
      .reduce((total, each) => total.plus(each));
    if (present) model.addLinearConstraint(sum.minus(present.times(task.units)), 0, 0);
    else model.addLinearConstraint(sum, task.units, task.units);
    return [{ task, start: first, end, present, parts }];
  });
  const of = new Map(placed.map((each) => [each.task.index, each]));

  // What cannot be placed at all takes what waits for it along.
  for (const { task, start, present } of placed)
    for (const tie of task.before) {
      const other = of.get(tie.task);
      if (tie.fromStart) throw new Error('links from a start are not given to the peer');
      if (!other) {
        if (present) model.addLinearConstraint(present, 0, 0);
        continue;
      }
      const gap = model.addLinearConstraint(start.minus(other.end), tie.gap, 2 * FAR);
      if (present) gap.onlyEnforceIf(present);
      if (present && other.present) model.addImplication(present, other.present);
    }

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

  const sumOf = (all: readonly Expression[]): Expression =>
    all.reduce((total, each) => total.plus(each), constant(0));
  const lates = problem.dues.map(({ due, tasks }) => {
    const late = model.newIntVar(0, FAR);
    for (const index of tasks) {
      const each = of.get(index);
      if (!each) continue;
      const bound = model.addLinearConstraint(late.minus(each.end), -due, 2 * FAR);
      if (each.present) bound.onlyEnforceIf(each.present);
    }
    return late;
  });
  const late = sumOf(lates);
  const finish = model.newIntVar(-FAR, FAR);
  for (const { end, present } of placed) {
    const bound = model.addLinearConstraint(finish.minus(end), 0, 2 * FAR);
    if (present) bound.onlyEnforceIf(present);
  }
  const out = sumOf(placed.flatMap(({ present }) => (present ? [present.times(-1)] : [])));
  const variables: Expression[] = placed.flatMap(({ start, end, present, parts, task }) => [
    ...(task.units === 1 ? [start] : [start, end]),
    ...(present ? [present] : []),
    ...(task.units === 1
      ? []
      : parts.flatMap((part) => [
          part.start,
          part.size as Expression,
          part.present!,
          part.units as Expression,
        ])),
  ]);
  // What counts windows is given only when it is asked for: it makes the model far larger.
  const goals: readonly (readonly [string, () => Expression, number])[] = [
    ...(everything ? [] : [['out', () => out, 0.4] as const]),
    ['late', () => late, 0.7],
    ['finish', () => finish, 0.6],
    ['windows', () => windowsUsed(model, problem, placed), 1],
  ];
  let visits: Visit[] = [];
  let proven = 0;
  let open = false;
  let leastLate = 0;
  let perWork = 1;
  for (const [name, valueOf, share] of goals) {
    const left = seconds - (cpu() - began);
    if (left < 0.05 * seconds) {
      open = true;
      break;
    }
    const value = valueOf();
    model.minimize(value);
    const solver = new CpSolver();
    const before = cpu();
    const work = Math.max(0.02, (left * share) / perWork);
    await solver.solve(model, {
      numWorkers: 1,
      maxDeterministicTime: work,
      // On a busy machine more time goes by than it has.
      maxTimeInSeconds: 3 * left,
      randomSeed: 1,
    });
    const used = cpu() - before;
    const status = solver.statusName();
    if (solver.deterministic_time > 0.05) perWork = used / solver.deterministic_time;
    if (name === 'late') leastLate = Math.max(0, Math.ceil(solver.bestObjectiveBound() - 1e-6));
    if (status !== 'OPTIMAL' && status !== 'FEASIBLE') {
      open = true;
      break;
    }
    visits = visitsOf(problem, placed, solver);
    if (status === 'OPTIMAL' && !open) proven += name === 'out' ? 0 : 1;
    else open = true;
    model.addLinearConstraint(value, -FAR * 100, solver.value(value));
    model.proto().solutionHint = { vars: [], values: [] };
    for (const each of variables) model.addHint(each, solver.value(each));
  }
  const units = new Map<number, number>();
  for (const visit of visits) units.set(visit.task, (units.get(visit.task) ?? 0) + visit.units);
  return {
    visits,
    unplaced: problem.tasks.filter(({ index, units: all }) => units.get(index) !== all).length,
    proven,
    leastLate,
    cpuSeconds: cpu() - began,
  };
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

/** How many windows are used: a choice of window for each visit. */
function windowsUsed(model: Model, problem: Problem, placed: readonly Placed[]): Expression {
  const used = problem.windows.map(() => model.newBoolVar());
  for (const { task, parts } of placed)
    for (const { start, size, present, slot } of parts) {
      if (slot) {
        if (slot.window >= 0) model.addImplication(present!, used[slot.window]!);
        continue;
      }
      const minutes = size as number;
      const choices = task.slots.flatMap((one): Literal[] => {
        const low = Math.max(one.start, task.earliest);
        if (low > one.end - minutes) return [];
        const here = model.newBoolVar();
        model.addLinearConstraint(start, low, one.end - minutes).onlyEnforceIf(here);
        if (one.window >= 0) {
          // Work that is left out uses none.
          if (present) {
            const counts = model.newBoolVar();
            model.addLinearConstraint(counts.minus(here).minus(present), -1, 1);
            model.addImplication(counts, used[one.window]!);
          } else model.addImplication(here, used[one.window]!);
        }
        return [here];
      });
      model.addExactlyOne(choices);
    }
  return used.reduce<Expression>((total, each) => total.plus(each), model.newIntVar(0, 0));
}

function visitsOf(problem: Problem, placed: readonly Placed[], solver: Solver): Visit[] {
  return placed.flatMap(({ task, parts, present }): Visit[] => {
    if (present && solver.value(present) === 0) return [];
    return parts.flatMap((part): Visit[] => {
      if (part.present && solver.value(part.present) === 0) return [];
      const start = solver.value(part.start);
      const end = start + solver.value(part.size);
      const units = solver.value(part.units);
      const slot = part.slot ?? task.slots.find((one) => one.start <= start && end <= one.end);
      return [{ task: task.index, window: slot!.window, start, end, units }];
    });
  });
}
