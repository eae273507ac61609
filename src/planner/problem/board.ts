import { copyOf, firstFree, freeUntil, take, type Profile } from './profile.js';
import {
  afterTie,
  visitMinutes,
  type Problem,
  type Slot,
  type Task,
  type Visit,
} from './problem.js';

/**
 * A schedule in the making. Each visit put down goes to the earliest moment that its links, its usable time and
 * what is left of the resources allow.
 */
export class Board {
  readonly problem: Problem;
  readonly visits: Visit[] = [];
  /** Units still to be placed, by task. */
  readonly left: number[];
  /** First start of each task; infinity before it is placed. */
  readonly starts: number[];
  /** Last finish so far of each task; minus infinity before it is placed. */
  readonly ends: number[];
  /** Where further visits of each task follow on: as `ends`, but settled visits may also have others before them. */
  readonly since: number[];
  readonly #free: Profile[];
  readonly #allowed: Uint8Array | undefined;

  /** `allowed[w]` is 1 where window `w` may be used; without it all may. */
  constructor(problem: Problem, allowed?: Uint8Array) {
    this.problem = problem;
    this.left = problem.tasks.map((task) => task.units);
    this.starts = problem.tasks.map(() => Number.POSITIVE_INFINITY);
    this.ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
    this.#free = problem.supplies.map((supply) => copyOf(supply.profile));
    this.#allowed = allowed;
    this.since = this.ends.slice();
    for (const visit of problem.pinned ?? []) this.put(visit);
    this.since.fill(Number.NEGATIVE_INFINITY);
  }

  /** Whether all that the task waits for is placed far enough to say when it may start. */
  ready(task: Task): boolean {
    return task.before.every((tie) =>
      tie.fromStart ? this.starts[tie.task]! < Number.POSITIVE_INFINITY : this.left[tie.task] === 0,
    );
  }

  /** The earliest start that links, `earliest` and visits already made allow. */
  release(task: Task): number {
    let release = Math.max(task.earliest, this.since[task.index]!);
    for (const tie of task.before) {
      const from = tie.fromStart ? this.starts[tie.task]! : this.ends[tie.task]!;
      release = Math.max(release, afterTie(tie, from));
    }
    return release;
  }

  /** What is left of a resource beside the visits. It must not be changed. */
  free(supply: number): Profile {
    return this.#free[supply]!;
  }

  /** Where a visit of so many units would go, or `undefined` when nowhere. */
  find(task: Task, units: number, from = this.release(task)): Visit | undefined {
    const minutes = visitMinutes(task, units);
    const deadline = task.latestEnd ?? Number.POSITIVE_INFINITY;
    const { latestStart = Number.POSITIVE_INFINITY } = task;
    const begunBy =
      this.starts[task.index]! <= latestStart ? Number.POSITIVE_INFINITY : latestStart;
    let best = Number.POSITIVE_INFINITY;
    let where: Slot | undefined;
    for (const slot of task.slots) {
      if (slot.start >= best) break;
      if (this.#allowed && slot.window >= 0 && this.#allowed[slot.window] === 0) continue;
      const start = Math.max(slot.start, from);
      if (start + minutes > Math.min(slot.end, deadline) || start >= best) continue;
      const at = this.#firstFree(task, start, minutes, slot.end - minutes);
      if (at < best && at <= begunBy && at + minutes <= Math.min(slot.end, deadline)) {
        best = at;
        where = slot;
      }
    }
    if (!where) return undefined;
    return { task: task.index, window: where.window, start: best, end: best + minutes, units };
  }

  /** The largest visit of at most `cap` units at the earliest moment that takes one. */
  findMost(task: Task, cap: number): Visit | undefined {
    const one = this.find(task, 1);
    if (!one || cap <= 1) return one;
    const slot = task.slots.find(
      (each) => each.window === one.window && each.start <= one.start && one.end <= each.end,
    )!;
    let until = Math.min(slot.end, task.latestEnd ?? slot.end);
    for (const { supply, amount } of task.demands)
      until = Math.min(until, freeUntil(this.#free[supply]!, amount, one.start));
    const room = until - one.start - task.setUp - task.makeSafe;
    const units = task.perUnit === 0 ? cap : Math.min(cap, Math.floor(room / task.perUnit));
    if (units <= 1) return one;
    return { ...one, end: one.start + visitMinutes(task, units), units };
  }

  put(visit: Visit): void {
    const task = this.problem.tasks[visit.task]!;
    for (const { supply, amount } of task.demands)
      take(this.#free[supply]!, amount, visit.start, visit.end);
    this.visits.push(visit);
    this.left[visit.task] = this.left[visit.task]! - visit.units;
    this.starts[visit.task] = Math.min(this.starts[visit.task]!, visit.start);
    this.ends[visit.task] = Math.max(this.ends[visit.task]!, visit.end);
    this.since[visit.task] = Math.max(this.since[visit.task]!, visit.end);
  }

  /** Takes back the last visit put down. */
  takeBack(): void {
    const visit = this.visits.pop()!;
    const task = this.problem.tasks[visit.task]!;
    for (const { supply, amount } of task.demands)
      take(this.#free[supply]!, -amount, visit.start, visit.end);
    this.left[visit.task] = this.left[visit.task]! + visit.units;
    let start = Number.POSITIVE_INFINITY;
    let end = Number.NEGATIVE_INFINITY;
    let since = Number.NEGATIVE_INFINITY;
    const settled = this.problem.pinned?.length ?? 0;
    this.visits.forEach((other, at) => {
      if (other.task !== visit.task) return;
      start = Math.min(start, other.start);
      end = Math.max(end, other.end);
      if (at >= settled) since = Math.max(since, other.end);
    });
    this.starts[visit.task] = start;
    this.ends[visit.task] = end;
    this.since[visit.task] = since;
  }

  /** Places up to `cap` units of a task in as few visits as its stretches allow. */
  place(task: Task, cap = Number.POSITIVE_INFINITY): void {
    let wanted = Math.min(cap, this.left[task.index]!);
    while (wanted > 0) {
      const visit = this.findMost(task, wanted);
      if (!visit) return;
      this.put(visit);
      wanted -= visit.units;
    }
  }

  #firstFree(task: Task, from: number, minutes: number, latest: number): number {
    let at = from;
    for (let settled = false; !settled && at <= latest;) {
      settled = true;
      for (const { supply, amount } of task.demands) {
        const next = firstFree(this.#free[supply]!, amount, at, minutes);
        if (next > at) {
          at = next;
          settled = false;
          if (at > latest) return at;
        }
      }
    }
    return at;
  }
}
