import { infinities, minusInfinities } from './blank.js';
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
  /** The window of each block of which something is placed; -1 while it is open. */
  readonly homes: Int32Array;
  readonly #bound: Int32Array;
  /** 1 for each block that something kept opened. */
  readonly #opened: Uint8Array;
  readonly #free: Profile[];
  /** 1 for each resource of which the board has a profile of its own; the others are still the problem's. */
  readonly #own: Uint8Array;
  #allowed: Uint8Array | undefined;
  /** Of each visit put down, `starts`, `ends` and `since` of its task before. */
  readonly #before: number[] = [];

  /** `allowed[w]` is 1 where window `w` may be used; without it all may. */
  constructor(problem: Problem, allowed?: Uint8Array) {
    this.problem = problem;
    const { tasks, supplies, blocks } = problem;
    this.left = [];
    for (const { units } of tasks) this.left.push(units);
    this.starts = infinities(tasks.length);
    this.ends = minusInfinities(tasks.length);
    this.#free = [];
    for (const { profile } of supplies) this.#free.push(profile);
    this.#own = new Uint8Array(this.#free.length);
    this.#allowed = allowed;
    this.homes = blocks ? new Int32Array(blocks.length).fill(-1) : noHomes;
    this.#bound = blocks ? new Int32Array(blocks.length) : noHomes;
    this.since = this.ends.slice();
    problem.effort.spent += 2 + (problem.tasks.length >> 3);
    for (const visit of problem.pinned ?? []) this.put(visit);
    this.since.fill(Number.NEGATIVE_INFINITY);
    this.#opened = blocks ? Uint8Array.from(this.#bound, (times) => Number(times > 0)) : noneOpened;
  }

  /** Lets windows be used from now on: those of which the value is 1. */
  allow(windows: Uint8Array): void {
    this.#allowed = windows;
  }

  /** Whether all that the task waits for is placed far enough to say when it may start. */
  ready(task: Task): boolean {
    return task.before.every((tie) =>
      tie.fromStart ? this.starts[tie.task]! < Number.POSITIVE_INFINITY : this.left[tie.task] === 0,
    );
  }

  /** The earliest start that links, `earliest` and visits already made allow. */
  release(task: Task): number {
    return Math.max(this.since[task.index]!, this.#releaseByTies(task));
  }

  #releaseByTies(task: Task): number {
    let release = task.earliest;
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

  /**
   * Where a visit of so many units would go, or `undefined` when nowhere. What is bound to the window of its block goes
   * there, once that is known.
   *
   * @param window Only in this one.
   */
  find(
    task: Task,
    units: number,
    from = this.release(task),
    window = this.#homeOf(task, units),
  ): Visit | undefined {
    const minutes = visitMinutes(task, units);
    const deadline = task.latestEnd ?? Number.POSITIVE_INFINITY;
    const { latestStart = Number.POSITIVE_INFINITY } = task;
    const begunBy =
      this.starts[task.index]! <= latestStart ? Number.POSITIVE_INFINITY : latestStart;
    let best = Number.POSITIVE_INFINITY;
    let where: Slot | undefined;
    const { effort } = this.problem;
    effort.spent += 2;
    const slots = window < 0 ? task.slots : slotsIn(task.slots, window);
    for (let i = firstReaching(slots, from + minutes); i < slots.length; i += 1) {
      const slot = slots[i]!;
      if (slot.start >= best) break;
      effort.spent += 1;
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
  findMost(task: Task, cap: number, window?: number): Visit | undefined {
    const single = this.find(task, 1, undefined, window);
    if (!single || cap <= 1) return single;
    const slot = task.slots.find(
      (each) =>
        each.window === single.window && each.start <= single.start && single.end <= each.end,
    )!;
    let until = Math.min(slot.end, task.latestEnd ?? slot.end);
    for (const { supply, amount } of task.demands)
      until = Math.min(until, freeUntil(this.#free[supply]!, amount, single.start));
    const room = until - single.start - task.setUp - task.makeSafe;
    const units = task.perUnit === 0 ? cap : Math.min(cap, Math.floor(room / task.perUnit));
    if (units <= 1) return single;
    return { ...single, end: single.start + visitMinutes(task, units), units };
  }

  put(visit: Visit): void {
    const task = this.problem.tasks[visit.task]!;
    this.problem.effort.spent += 1 + task.demands.length;
    for (const { supply, amount } of task.demands) {
      if (this.#own[supply] === 0) {
        this.#free[supply] = copyOf(this.#free[supply]!);
        this.#own[supply] = 1;
      }
      take(this.#free[supply]!, amount, visit.start, visit.end);
    }
    this.visits.push(visit);
    this.left[visit.task] = this.left[visit.task]! - visit.units;
    if (task.block !== undefined && this.#binds(task)) {
      if (this.#bound[task.block] === 0) this.homes[task.block] = this.#lastWindow(task, visit);
      this.#bound[task.block]! += 1;
    }
    this.#before.push(this.starts[visit.task]!, this.ends[visit.task]!, this.since[visit.task]!);
    this.starts[visit.task] = Math.min(this.starts[visit.task]!, visit.start);
    this.ends[visit.task] = Math.max(this.ends[visit.task]!, visit.end);
    this.since[visit.task] = Math.max(this.since[visit.task]!, visit.end);
  }

  /** Takes back the last visit put down. */
  takeBack(): void {
    const visit = this.visits.pop()!;
    const task = this.problem.tasks[visit.task]!;
    if (task.block !== undefined && this.#binds(task)) {
      this.#bound[task.block]! -= 1;
      if (this.#bound[task.block] === 0) this.homes[task.block] = -1;
    }
    for (const { supply, amount } of task.demands)
      take(this.#free[supply]!, -amount, visit.start, visit.end);
    this.left[visit.task] = this.left[visit.task]! + visit.units;
    this.since[visit.task] = this.#before.pop()!;
    this.ends[visit.task] = this.#before.pop()!;
    this.starts[visit.task] = this.#before.pop()!;
    this.problem.effort.spent += 1 + task.demands.length;
  }

  /** Places up to `cap` units of a task in as few visits as its stretches allow. */
  place(task: Task, cap = Number.POSITIVE_INFINITY, window?: number): void {
    let wanted = Math.min(cap, this.left[task.index]!);
    while (wanted > 0) {
      const free = this.findMost(task, wanted, window);
      const visit = (task.joins && this.#joined(task, task.joins, wanted, free, window)) ?? free;
      if (!visit) return;
      this.put(visit);
      wanted -= visit.units;
    }
  }

  /**
   * The most units that are done in one go with a visit of the same repeated work that is there: right after it, or all of
   * them right before. They take no set up and no make safe. `undefined` where a visit of their own is in another window and
   * begins no later.
   */
  #joined(
    task: Task,
    joins: readonly number[],
    wanted: number,
    free: Visit | undefined,
    window = this.#homeOf(task, wanted),
  ): Visit | undefined {
    // Of what holds together only as much as is placed with it at one go.
    if (task.lastOnly && wanted < this.left[task.index]!) return undefined;
    const own = this.#releaseByTies(task);
    let best: Visit | undefined;
    for (const other of this.visits) {
      if (!joins.includes(other.task)) continue;
      if (window >= 0 && other.window !== window) continue;
      if (this.#allowed && other.window >= 0 && this.#allowed[other.window] === 0) continue;
      this.problem.effort.spent += 1 + task.demands.length;
      const slot = slotsIn(task.slots, other.window).find(
        (each) => each.start <= other.start && other.end <= each.end,
      );
      if (!slot) continue;
      const { latestStart = Number.POSITIVE_INFINITY, latestEnd = slot.end } = task;
      let until = Math.min(slot.end, latestEnd);
      for (const { supply, amount } of task.demands)
        until = Math.min(until, freeUntil(this.#free[supply]!, amount, other.end));
      const units = Math.min(wanted, Math.floor((until - other.end) / task.perUnit));
      const minutes = wanted * task.perUnit;
      const ahead = other.start - minutes;
      const after = { ...other, task: task.index, start: other.end };
      if (units > 0 && other.end >= own && other.end <= latestStart) {
        if (!best || units > best.units)
          best = { ...after, end: other.end + units * task.perUnit, units };
      } else if (ahead >= Math.max(slot.start, own) && ahead <= latestStart) {
        if (this.#firstFree(task, ahead, minutes, ahead) > ahead || best?.units === wanted)
          continue;
        best = { ...after, start: ahead, end: other.start, units: wanted };
      }
    }
    if (!best || !free) return best;
    return best.window === free.window || best.start <= free.start ? best : undefined;
  }

  /** Whether a visit of so many units would settle the window of the task's block. */
  settles(task: Task, units: number): boolean {
    return (
      task.block !== undefined &&
      this.#bound[task.block] === 0 &&
      (task.lastOnly === undefined || units === this.left[task.index])
    );
  }

  /** Whether a visit of so many units may go in one window or another, with a difference to its block. */
  branches(task: Task, units: number): boolean {
    return (
      this.settles(task, units) ||
      (task.lastOnly === true && units === this.left[task.index] && this.#isKept(task))
    );
  }

  /** Where a visit of so many units may go: one place, or one in each window where that makes a difference. */
  choices(task: Task, units: number, from: number): Visit[] {
    if (!this.branches(task, units)) {
      const visit = this.find(task, units, from);
      return visit ? [visit] : [];
    }
    const windows = [...new Set(task.slots.map((slot) => slot.window))];
    return windows.flatMap((window) => this.find(task, units, from, window) ?? []);
  }

  /** Whether some blocks are whole: of each all is done, in its window, or none; but those that something kept opened. */
  isWhole(some: Iterable<number> = this.homes.keys()): boolean {
    const { blocks = [], tasks } = this.problem;
    const isDone = (index: number): boolean => this.left[index] === 0;
    return [...some].every((at) => {
      if (this.#bound[at] === 0) return true;
      const { members, runners } = blocks[at]!;
      const whole = members.every(isDone) && runners.every(isDone);
      return (
        (whole || this.#opened[at] === 1) &&
        runners.every(
          (index) => !isDone(index) || this.#lastWindow(tasks[index]!) === this.homes[at],
        )
      );
    });
  }

  /** Whether a task is bound to its block's window as it stands: repeated work of which the last unit is, once done. */
  #binds(task: Task): boolean {
    return task.lastOnly === undefined || this.left[task.index] === 0;
  }

  #homeOf(task: Task, units: number): number {
    if (task.block === undefined) return -1;
    // Beside visits that are kept, a last visit need not be the last in time.
    if (task.lastOnly && (units < this.left[task.index]! || this.#isKept(task))) return -1;
    return this.homes[task.block]!;
  }

  #isKept(task: Task): boolean {
    return this.problem.pinned?.some((visit) => visit.task === task.index) ?? false;
  }

  /** The window of a task's visit that ends last. */
  #lastWindow(task: Task, known?: Visit): number {
    let last = known;
    for (const visit of this.visits)
      if (visit.task === task.index && (!last || visit.end > last.end)) last = visit;
    return last?.window ?? -1;
  }

  #firstFree(task: Task, from: number, minutes: number, latest: number): number {
    let at = from;
    for (let settled = false; !settled && at <= latest;) {
      settled = true;
      this.problem.effort.spent += task.demands.length;
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

// Those of boards without blocks.
const noHomes = new Int32Array(0);
const noneOpened = new Uint8Array(0);

const byWindow = new WeakMap<readonly Slot[], Map<number, readonly Slot[]>>();

/** Those of some slots that lie in a window. */
export function slotsIn(slots: readonly Slot[], window: number): readonly Slot[] {
  let known = byWindow.get(slots);
  if (!known) {
    const made = new Map<number, Slot[]>();
    for (const slot of slots) {
      const own = made.get(slot.window);
      if (own) own.push(slot);
      else made.set(slot.window, [slot]);
    }
    byWindow.set(slots, (known = made));
  }
  return known.get(window) ?? [];
}

// Of each list of slots, the latest end of those up to each: they may overlap where windows do.
const reaches = new WeakMap<readonly Slot[], Float64Array>();

/** Index of the first slot that ends at a moment or later; slots before it do not. O(log n) after the first call. */
function firstReaching(slots: readonly Slot[], moment: number): number {
  if (slots.length < 8) return 0;
  let reach = reaches.get(slots);
  if (!reach) {
    reach = new Float64Array(slots.length);
    let latest = Number.NEGATIVE_INFINITY;
    slots.forEach((slot, i) => (reach![i] = latest = Math.max(latest, slot.end)));
    reaches.set(slots, reach);
  }
  let low = 0;
  let high = slots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (reach[middle]! < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}
