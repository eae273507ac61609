import {
  Board,
  compareScores,
  headsOf,
  unitsLeftOut,
  weightOf,
  type Problem,
  type Score,
  type Task,
} from '../fit/index.js';
import { placeCluster } from '../problem/place-clusters.js';
import type { Goal } from './objectives.js';
import type { Step, Steps } from './steps.js';

/** What a search turns over: in which order work is placed, how much of it at first, and in which windows. */
export interface Recipe {
  readonly steps: Steps;
  /** 1 where a window may be used. */
  readonly allowed: Uint8Array;
}

/**
 * Places work as recipes say, one after another. What the next has in common with the last, from the start on, stays where
 * it is: the board is the same as if all of it were placed anew.
 */
export class Decoder {
  readonly #problem: Problem;
  readonly #goal: Goal;
  #board: Board;
  #allowed: Uint8Array | undefined;
  /** Steps that are done. */
  #steps: Step[] = [];
  /** Visits on the board before each of them. */
  readonly #marks: number[] = [];
  #watch: Watch | undefined;

  constructor(problem: Problem, goal: Goal) {
    this.#problem = problem;
    this.#goal = goal;
    this.#board = new Board(problem);
  }

  /**
   * The board that a recipe comes to. It changes with the next call.
   *
   * @param than What is worse than this, whatever follows, is given up half made.
   */
  decode(recipe: Recipe): Board;
  decode(recipe: Recipe, than: Score | undefined): Board | undefined;
  decode({ steps, allowed }: Recipe, than?: Score): Board | undefined {
    const { effort } = this.#problem;
    const board = this.#boardIn(allowed, steps);
    const watch = than && (this.#watch ??= new Watch(this.#problem, this.#goal));
    watch?.look(board, this.#steps, than!);
    for (let i = this.#steps.length; i < steps.length; i += 1) {
      if (effort.isCut()) return than ? undefined : board;
      const step = steps[i]!;
      this.#place(step);
      if (watch?.isHopeless(step, this.#marks[i]!)) return undefined;
    }
    return board;
  }

  /**
   * The same, given up once the units left out weigh more than `most`; `lost`: what all that are left out weigh.
   *
   * @param weights Of one unit of each task.
   * @param out Units of each task that may be left out at no weight.
   */
  decodeWithin(
    { steps, allowed }: Recipe,
    weights: Float64Array,
    out: readonly number[],
    most: number,
  ): { board: Board; lost: number } | undefined {
    const { effort } = this.#problem;
    const board = this.#boardIn(allowed, steps);
    let lost = 0;
    const lose = ({ tasks: own, units }: Step): void => {
      if (units > 0) return;
      for (const index of own)
        lost += weights[index]! * Math.max(0, board.left[index]! - out[index]!);
    };
    for (const step of this.#steps) lose(step);
    for (let i = this.#steps.length; i < steps.length; i += 1) {
      if (effort.isCut()) return undefined;
      const step = steps[i]!;
      this.#place(step);
      lose(step);
      if (lost > most) return undefined;
    }
    return { board, lost };
  }

  #place(step: Step): void {
    const { clusters = [], tasks } = this.#problem;
    const board = this.#board;
    this.#marks[this.#steps.length] = board.visits.length;
    this.#steps.push(step);
    if (step.cluster >= 0) return placeCluster(board, clusters[step.cluster]!, step.tasks);
    const task = tasks[step.tasks[0]!]!;
    if (board.left[task.index]! > 0 && board.ready(task)) placeUnits(board, task, step);
  }

  /** A board on which only the steps are done that both recipes begin with. */
  #boardIn(allowed: Uint8Array, steps: Steps): Board {
    const known = this.#steps;
    if (this.#allowed !== allowed) {
      this.#allowed = allowed;
      this.#steps = [];
      return (this.#board = new Board(this.#problem, allowed));
    }
    let same = 0;
    while (same < known.length && known[same] === steps[same]) same += 1;
    this.#problem.effort.spent += same >> 3;
    if (same < known.length) {
      const mark = this.#marks[same]!;
      while (this.#board.visits.length > mark) this.#board.takeBack();
      known.length = same;
    }
    return this.#board;
  }
}

/** Places the units of a step, at once if it says so and there is room. */
function placeUnits(board: Board, task: Task, { units, atOnce }: Step): void {
  const left = board.left[task.index]!;
  const wanted = units === 0 ? left : Math.min(units, left);
  const visit = atOnce && wanted > 1 ? board.find(task, wanted) : undefined;
  if (visit) board.put(visit);
  else board.place(task, wanted);
}

/** Tells step by step whether what is placed so far can still come to something no worse than a score. */
class Watch {
  readonly #problem: Problem;
  readonly #goal: Goal;
  readonly #ends: readonly number[];
  readonly #duesOf: number[][];
  readonly #late: Float64Array;
  readonly #uses: Int32Array;
  /** Left out whatever is done: pieces, and units at the least, by task and all together. */
  readonly #neverPlaced: number;
  readonly #neverUnits: readonly number[];
  readonly #neverUnitsSum: number;
  #than: Score = [];
  #board!: Board;
  #lateSum = 0;
  #finish = 0;
  #windows = 0;
  #lost = 0;
  #lostUnits = 0;

  constructor(problem: Problem, goal: Goal) {
    this.#problem = problem;
    this.#goal = goal;
    const board = new Board(problem);
    const heads = headsOf(board);
    const { ends } = heads;
    this.#ends = ends;
    this.#duesOf = problem.tasks.map(() => []);
    problem.dues.forEach(({ tasks }, at) => {
      for (const index of tasks) this.#duesOf[index]!.push(at);
    });
    this.#late = new Float64Array(problem.dues.length);
    this.#uses = new Int32Array(problem.windows.length);
    const isNever = ({ index }: Task): boolean => ends[index] === Number.POSITIVE_INFINITY;
    const never = problem.tasks.filter(isNever);
    this.#neverPlaced = never.reduce((sum, task) => sum + weightOf(task, problem), 0);
    this.#neverUnits = problem.tasks.map((task) =>
      isNever(task) ? unitsLeftOut(board, heads, task) : 0,
    );
    this.#neverUnitsSum = this.#neverUnits.reduce((sum, units) => sum + units, 0);
  }

  /** Looks at a board anew, on which some steps are done. */
  look(board: Board, done: Steps, than: Score): void {
    const { dues, effort, tasks } = this.#problem;
    this.#board = board;
    this.#than = than;
    this.#lateSum = 0;
    this.#finish = this.#problem.finishFrom ?? 0;
    this.#windows = 0;
    this.#lost = 0;
    this.#lostUnits = 0;
    effort.spent += tasks.length >> 3;
    for (const { index } of tasks) {
      const end = this.#endOf(index);
      if (end > this.#finish) this.#finish = end;
    }
    dues.forEach(({ due, tasks: own }, at) => {
      let late = 0;
      for (const index of own) late = Math.max(late, this.#endOf(index) - due);
      this.#late[at] = late;
      this.#lateSum += late;
    });
    this.#uses.fill(0);
    this.#count(0);
    for (const step of done) this.#lose(step);
  }

  isHopeless(step: Step, mark: number): boolean {
    const { dues } = this.#problem;
    for (const index of step.tasks) {
      const end = this.#endOf(index);
      if (end > this.#finish) this.#finish = end;
      for (const at of this.#duesOf[index]!) {
        const more = end - dues[at]!.due - this.#late[at]!;
        if (more <= 0) continue;
        this.#late[at]! += more;
        this.#lateSum += more;
      }
    }
    this.#count(mark);
    this.#lose(step);
    const than = this.#than;
    const out = this.#neverPlaced + this.#lost;
    const units = this.#neverUnitsSum + this.#lostUnits;
    if (out !== than[0]) return out > than[0]!;
    if (units > than[1]!) return true;
    // What is left out here and was not thought so from the start makes the rest unsure.
    if (units < than[1]! || this.#lost > 0) return false;
    const { order, ahead } = this.#goal;
    const values =
      order === 'late-finish' ? [this.#lateSum, this.#finish] : [this.#finish, this.#lateSum];
    values.splice(ahead, 0, this.#windows);
    return compareScores(values, than.slice(2)) > 0;
  }

  /** When a task ends: so far, and not before it could if nothing else were to be done. */
  #endOf(index: number): number {
    const head = this.#ends[index]!;
    const end = this.#board.ends[index]!;
    return head === Number.POSITIVE_INFINITY ? end : Math.max(head, end);
  }

  #count(mark: number): void {
    const { visits } = this.#board;
    for (let i = mark; i < visits.length; i += 1) {
      const { window } = visits[i]!;
      if (window >= 0 && this.#uses[window]! === 0) {
        this.#uses[window] = 1;
        this.#windows += 1;
      }
    }
  }

  /** Counts what a step leaves out for good. */
  #lose({ tasks, units }: Step): void {
    if (units > 0) return;
    for (const index of tasks) {
      const left = this.#board.left[index]!;
      if (left === 0) continue;
      const task = this.#problem.tasks[index]!;
      if (this.#ends[index] !== Number.POSITIVE_INFINITY) {
        this.#lost += weightOf(task, this.#problem);
        this.#lostUnits += left;
      } else this.#lostUnits += left - this.#neverUnits[index]!;
    }
  }
}
