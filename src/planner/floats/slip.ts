import { Board, decide, type Problem, type Task, type Visit } from '../fit/index.js';
import { inOrder } from './in-order.js';
import { afterTie, visitMinutes } from '../problem/problem.js';

/** Visits up to which every finish is pushed on; beyond, how late all can be at once is told. */
const MOST_VISITS = 400;
/** Tasks up to which a way round work of other chains is looked for too, and places looked at for it. */
const MOST_TASKS = 30;
const STEPS = 400;
const DAY_MINUTES = 1440;

/**
 * Pushes work of a plan on. What begins before the held visit stays; the held visit ends no sooner than it is asked to;
 * all after it keeps its order and goes as little later as it must. No key date may be missed that was met, none get
 * later that was missed, and all must still find its time. For few tasks any order is looked at.
 */
export class Pusher {
  readonly #problem: Problem;
  readonly #visits: readonly Visit[];
  /** By when each task must end. */
  readonly #limits: readonly number[];
  readonly #starts: readonly number[];
  readonly #whole: boolean;
  /** What begins before the visit that was asked of last. */
  #board: Board | undefined;
  readonly #slips = new Map<number, number>();
  /** What outside work and all gaps take together: what ends so near the last day looked at is held back by that alone. */
  readonly #outsideMinutes: number;

  constructor(problem: Problem, visits: readonly Visit[]) {
    const { pinned: _, ...free } = problem;
    this.#problem = free;
    const { tasks } = problem;
    this.#visits = inOrder(problem, visits);
    const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
    const starts = tasks.map(() => Number.POSITIVE_INFINITY);
    const units = tasks.map(() => 0);
    for (const visit of visits) {
      ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
      starts[visit.task] = Math.min(starts[visit.task]!, visit.start);
      units[visit.task]! += visit.units;
    }
    const limits = tasks.map(() => Number.POSITIVE_INFINITY);
    for (const { due, tasks: own } of problem.dues) {
      const by = own.reduce((last, index) => Math.max(last, ends[index]!), due);
      for (const index of own) limits[index] = Math.min(limits[index]!, by);
    }
    this.#outsideMinutes = tasks.reduce(
      (sum, task) =>
        sum +
        (task.outside ? visitMinutes(task, task.units) : 0) +
        task.after.reduce((gaps, { gap }) => gaps + gap, 0),
      0,
    );
    this.#limits = limits;
    this.#starts = starts;
    this.#whole = tasks.every((task) => task.units === 1 && units[task.index] === 1);
  }

  /** Whether each finish is pushed on. */
  get isAble(): boolean {
    return this.#visits.length <= MOST_VISITS;
  }

  /** How far the last visit of a task can slip; infinity for outside work that nothing ends. */
  of(index: number): number {
    const slip = this.#slips.get(index) ?? this.#slipOf(index);
    this.#slips.set(index, slip);
    return slip;
  }

  #slipOf(index: number): number {
    const at = this.#visits.findLastIndex((visit) => visit.task === index);
    const visit = this.#visits[at]!;
    const task = this.#problem.tasks[index]!;
    const minutes = visitMinutes(task, visit.units);
    const limit = this.#limits[index]!;
    const last = task.slots.reduce((end, slot) => Math.max(end, slot.end), visit.end);
    let from = visit.start;
    let until = Math.min(last, limit) - minutes + 1;
    while (until - from > 1) {
      const middle = Math.floor((from + until) / 2);
      if (this.#canStart(at, middle)) from = middle;
      else until = middle;
    }
    const isEnded = !task.outside || from + minutes < last - this.#outsideMinutes - DAY_MINUTES;
    return isEnded ? Math.max(0, from - visit.start) : Infinity;
  }

  /** Whether the visit can start at a moment or later with everything else in time. */
  #canStart(at: number, start: number): boolean {
    const board = this.#boardBefore(at);
    const isPushed = this.#push(board, at, start);
    takeBackTo(board, at);
    return isPushed || this.#decide(at, start);
  }

  #boardBefore(at: number): Board {
    const board = (this.#board ??= new Board(this.#problem));
    takeBackTo(board, at);
    for (const visit of this.#visits.slice(board.visits.length, at)) board.put(visit);
    return board;
  }

  #push(board: Board, at: number, start: number): boolean {
    const { tasks } = this.#problem;
    // Work from here on may have moved; after it nothing has.
    let until = start;
    let moved = false;
    for (let i = at; i < this.#visits.length; i += 1) {
      const visit = this.#visits[i]!;
      if (i > at && visit.start >= until) return !moved || this.#restIsWhole(board, i);
      const task = tasks[visit.task]!;
      const { window } = visit;
      const floor = Math.max(i === at ? start : visit.start, board.release(task));
      const found =
        (floor <= visit.start ? board.find(task, visit.units, visit.start, window) : undefined) ??
        board.find(task, visit.units, floor);
      if (!found || found.end > this.#limits[visit.task]!) return false;
      board.put(found);
      if (found.start === visit.start && found.window === window) continue;
      moved = true;
      until = Math.max(until, found.end, this.#followersOf(task, found));
    }
    return board.isWhole();
  }

  /** Whether what is bound to one window still is, with the rest put down as it is. */
  #restIsWhole(board: Board, from: number): boolean {
    if (!this.#problem.blocks) return true;
    for (const visit of this.#visits.slice(from)) board.put(visit);
    return board.isWhole();
  }

  /** Past the last planned start of what waits for a task and can no longer start then. */
  #followersOf(task: Task, visit: Visit): number {
    let until = Number.NEGATIVE_INFINITY;
    for (const tie of task.after) {
      const planned = this.#starts[tie.task]!;
      const ready = afterTie(tie, tie.fromStart ? visit.start : visit.end);
      if (Number.isFinite(planned) && ready > planned) until = Math.max(until, planned + 1);
    }
    return until;
  }

  /** The same with work in any order, each no sooner than it is planned. */
  #decide(at: number, start: number): boolean {
    const { tasks } = this.#problem;
    if (!this.#whole || tasks.length > MOST_TASKS) return false;
    const held = this.#visits[at]!.task;
    const limited: Problem = {
      ...this.#problem,
      tasks: tasks.map((task) => ({
        ...task,
        earliest: Math.max(task.earliest, task.index === held ? start : this.#starts[task.index]!),
        due: this.#limits[task.index]!,
      })),
    };
    return decide(limited, STEPS).visits !== undefined;
  }
}

function takeBackTo(board: Board, count: number): void {
  while (board.visits.length > count) board.takeBack();
}
