import {
  Board,
  compareScores,
  headsOf,
  unitsLeftOut,
  weightOf,
  type Problem,
  type Score,
  type Task,
  type Visit,
} from '../fit/index.js';
import { slotsIn } from '../problem/board.js';
import { placeCluster } from '../problem/place-clusters.js';
import type { Goal } from './objectives.js';
import type { Step, Steps } from './steps.js';

/** What a search turns over: in which order work is placed, how much of it at first, and in which windows. */
export interface Recipe {
  readonly steps: Steps;
  /** 1 where a window may be used. */
  readonly allowed: Uint8Array;
}

/** A recipe with what it came to, in the order in which that was placed. */
interface Known extends Recipe {
  readonly visits: readonly Visit[];
  /** Visits before each step, and all of them. */
  readonly marks: readonly number[];
}

/**
 * Places work as recipes say, one after another. What the next has in common with the last, from the start on, stays where
 * it is, and what it has in common with the one that was kept is put back without a search: the board is the same as if all of
 * it were placed anew.
 */
export class Decoder {
  readonly #problem: Problem;
  readonly #goal: Goal;
  readonly #board: Board;
  #allowed: Uint8Array;
  /** Steps that are done. */
  readonly #steps: Step[] = [];
  /** Visits on the board before each of them. */
  readonly #marks: number[] = [];
  #known: Known | undefined;
  #watch: Watch | undefined;

  constructor(problem: Problem, goal: Goal) {
    this.#problem = problem;
    this.#goal = goal;
    this.#allowed = new Uint8Array(problem.windows.length).fill(1);
    this.#board = new Board(problem, this.#allowed);
  }

  /** The board that a recipe comes to. It changes with the next call. */
  decode(recipe: Recipe): Board {
    const { effort } = this.#problem;
    this.#begin(recipe, this.#sharedWith(recipe).first);
    for (let i = this.#steps.length; i < recipe.steps.length && !effort.isCut(); i += 1)
      this.#place(recipe.steps[i]!);
    return this.#board;
  }

  /**
   * The board that a recipe comes to, or `same` where every piece of work lies as in the recipe that was kept: this one is
   * then kept in its place. What is worse than a score, whatever follows, is given up half made.
   */
  decodeNoWorse(recipe: Recipe, than: Score): Board | 'same' | undefined {
    const watch = (this.#watch ??= new Watch(this.#problem, this.#goal));
    return this.#decode(recipe, {
      look: (done) => {
        watch.look(this.#board, done, than);
        return false;
      },
      isOver: (step) => watch.isHopeless(step, this.#marks[this.#steps.length - 1]!),
    });
  }

  /**
   * The same, given up once the units left out weigh more than `most`.
   *
   * @param weights Of one unit of each task.
   * @param out Units of each task that may be left out at no weight.
   */
  decodeWithin(
    recipe: Recipe,
    weights: Float64Array,
    out: readonly number[],
    most: number,
  ): Board | 'same' | undefined {
    let lost = 0;
    const isOver = ({ tasks, units }: Step): boolean => {
      if (units > 0) return false;
      for (const index of tasks)
        lost += weights[index]! * Math.max(0, this.#board.left[index]! - out[index]!);
      return lost > most;
    };
    return this.#decode(recipe, { look: (done) => done.some(isOver), isOver });
  }

  /** Keeps the recipe that was placed last, as a whole, for those that are much like it; what it came to. */
  keep({ steps, allowed }: Recipe): readonly Visit[] {
    const visits = this.#board.visits.slice();
    this.#problem.effort.spent += steps.length >> 3;
    if (this.#steps.length < steps.length) return visits;
    this.#known = {
      steps,
      allowed,
      visits,
      marks: [...this.#marks.slice(0, steps.length), visits.length],
    };
    return visits;
  }

  #decode(
    recipe: Recipe,
    { look, isOver }: { look: (done: Steps) => boolean; isOver: (step: Step) => boolean },
  ): Board | 'same' | undefined {
    const { steps } = recipe;
    const { effort } = this.#problem;
    const { first, end } = this.#sharedWith(recipe);
    const known = this.#known;
    if (first === steps.length && first === known?.steps.length) return 'same';
    this.#begin(recipe, first);
    if (look(this.#steps)) return undefined;
    for (let i = this.#steps.length; i < steps.length; i += 1) {
      if (effort.isCut()) return undefined;
      if (i === end && this.#keepIfSame(recipe, first, end)) return 'same';
      this.#place(steps[i]!);
      if (isOver(steps[i]!)) return undefined;
    }
    if (end === steps.length && this.#keepIfSame(recipe, first, end)) return 'same';
    return this.#board;
  }

  /** How many steps a recipe has in common with the one that was kept from the start on, and where it is the same again. */
  #sharedWith({ steps, allowed }: Recipe): { first: number; end: number } {
    const known = this.#known;
    if (!known) return { first: 0, end: -1 };
    const most = Math.min(steps.length, known.steps.length);
    let first = 0;
    while (first < most && steps[first] === known.steps[first]) first += 1;
    if (known.allowed !== allowed)
      return { first: this.#sameUnder(allowed, known, first), end: -1 };
    let same = 0;
    while (same < most - first && steps.at(-1 - same) === known.steps.at(-1 - same)) same += 1;
    this.#problem.effort.spent += (first + same) >> 3;
    return { first, end: steps.length - same };
  }

  /** Whether the steps from `first` to `end` came to what they did in the recipe that was kept; if so this one is kept in its place. */
  #keepIfSame({ steps, allowed }: Recipe, first: number, end: number): boolean {
    const known = this.#known!;
    const { visits } = this.#board;
    const shift = known.steps.length - steps.length;
    const from = known.marks[first]!;
    const to = known.marks[end + shift]!;
    if (visits.length !== to) return false;
    for (let i = from; i < to; i += 1)
      if (!has(known.visits, from, to, i, visits[i]!)) return false;
    this.#problem.effort.spent += steps.length >> 3;
    this.#known = {
      steps,
      allowed,
      visits: [...visits, ...known.visits.slice(to)],
      marks: [...this.#marks.slice(0, end), ...known.marks.slice(end + shift)],
    };
    return true;
  }

  /** How many of the first steps come to the same in other windows. */
  #sameUnder(
    allowed: Uint8Array,
    { steps, allowed: before, visits, marks }: Known,
    most: number,
  ): number {
    const { effort, tasks } = this.#problem;
    const more: number[] = [];
    effort.spent += (allowed.length + most) >> 3;
    allowed.forEach((each, window) => {
      if (each === 1 && before[window] === 0) more.push(window);
    });
    for (let i = 0; i < most; i += 1) {
      let start = Infinity;
      for (let at = marks[i]!; at < marks[i + 1]!; at += 1) {
        const { window } = visits[at]!;
        if (window >= 0 && allowed[window] === 0) return i;
        ({ start } = visits[at]!);
      }
      const { tasks: own, cluster } = steps[i]!;
      // What is placed whole looks at nothing that begins later.
      const by = cluster < 0 && tasks[own[0]!]!.units === 1 ? start : Infinity;
      for (const window of more)
        for (const task of own)
          if (slotsIn(tasks[task]!.slots, window).some((slot) => slot.start < by)) return i;
    }
    return most;
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

  /** Sees to it that a board has those steps done, and no more, that a recipe begins with and that are known. */
  #begin({ steps, allowed }: Recipe, first: number): void {
    const done = this.#steps;
    let same = 0;
    while (same < done.length && done[same] === steps[same]) same += 1;
    this.#problem.effort.spent += same >> 3;
    if (this.#allowed !== allowed) {
      const { visits } = this.#board;
      const marks = [...this.#marks.slice(0, done.length), visits.length];
      const known = { steps: done, allowed: this.#allowed, visits, marks };
      same = this.#sameUnder(allowed, known, same);
      this.#allowed = allowed;
      this.#board.allow(allowed);
    }
    if (same < done.length) {
      const mark = this.#marks[same]!;
      while (this.#board.visits.length > mark) this.#board.takeBack();
      done.length = same;
    }
    for (let i = this.#steps.length; i < first; i += 1) {
      const { visits, marks } = this.#known!;
      this.#marks[i] = this.#board.visits.length;
      this.#steps.push(steps[i]!);
      for (let at = marks[i]!; at < marks[i + 1]!; at += 1) this.#board.put(visits[at]!);
    }
  }
}

/** Whether a visit is among some others, looked for from a place outwards. */
function has(
  visits: readonly Visit[],
  from: number,
  to: number,
  near: number,
  visit: Visit,
): boolean {
  for (let by = 0; by < to - from; by += 1)
    for (const at of [near - by, near + by]) {
      if (at < from || at >= to) continue;
      const { task, start, end, window, units } = visits[at]!;
      if (task === visit.task && start === visit.start)
        return end === visit.end && window === visit.window && units === visit.units;
    }
  return false;
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
