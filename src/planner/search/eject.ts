import {
  afterTie,
  beforeTie,
  Board,
  copyOf,
  firstFree,
  headsOf,
  take,
  visitMinutes,
  type Problem,
  type Profile,
  type Slot,
  type Task,
  type Visit,
} from '../fit/index.js';
import { latestAllFree } from '../problem/latest.js';
import { indexAt } from '../problem/profile.js';
import type { Random } from '../random.js';

/** Pieces of work that are put elsewhere at random after one that put out others. */
const STIRRED = 3;
/** How far along links it is looked for what has to leave: more only saves trouble later, and takes ever longer. */
const HANDS = 3;

/** Above so many tasks it came to nothing that changes of lists did not find in the same steps. */
const MANY_TASKS = 100;

/** Whether the search below is for a problem: what holds together and what is kept it does not know. */
export function canEject({ blocks, pinned, tasks, order }: Problem): boolean {
  return (
    tasks.length <= MANY_TASKS &&
    !blocks &&
    !pinned &&
    order.length === tasks.length &&
    !tasks.some((task) => task.joins)
  );
}

/** By when something must begin and end. */
interface Limits {
  readonly begin: number;
  readonly end: number;
}

/** A place for a visit, and what has to leave for it. */
interface Opening {
  readonly visit: Visit;
  readonly out: ReadonlySet<Visit>;
}

/**
 * Puts all of some work in so many windows at the most, each piece by the end it may have: a piece without a place puts out those
 * that are missed least, these look for a place in turn, and what has none again and again is missed ever more.
 *
 * @see Nagata and Bräysy, "A powerful route minimization heuristic for the vehicle routing problem with time windows", Operations
 * Research Letters 37 (2009), from memory; there without links.
 */
export class Ejection {
  readonly #problem: Problem;
  readonly #random: Random;
  readonly #most: number;
  readonly #free: Profile[];
  readonly #own: Visit[][];
  readonly #left: number[];
  /** Work by window, and by what it takes. */
  readonly #within: Visit[][];
  readonly #taking: Visit[][];
  #used = 0;
  readonly #weights: number[];
  readonly #pool: number[] = [];
  readonly #heads: readonly number[];
  /** Not, where some of the work has no time by itself. */
  readonly isPossible: boolean;

  /**
   * @param problem Its tasks have no time where they are not to be placed.
   * @param visits What is to be placed, as it lies now.
   * @param most Windows.
   */
  constructor(problem: Problem, visits: readonly Visit[], most: number, random: Random) {
    this.#problem = problem;
    this.#random = random;
    this.#most = most;
    this.#free = problem.supplies.map(({ profile }) => copyOf(profile));
    this.#own = problem.tasks.map(() => []);
    this.#left = problem.tasks.map(({ units }) => units);
    this.#within = problem.windows.map(() => []);
    this.#taking = problem.supplies.map(() => []);
    this.#weights = problem.tasks.map(() => 1);
    const { starts, ends } = headsOf(new Board(problem));
    this.#heads = starts;
    this.isPossible = problem.tasks.every(
      ({ index, units }) => units === 0 || ends[index]! < Number.POSITIVE_INFINITY,
    );
    if (!this.isPossible) return;
    for (const visit of visits) {
      const { latestEnd = Number.POSITIVE_INFINITY } = problem.tasks[visit.task]!;
      if (visit.end <= latestEnd && visit.units <= this.#left[visit.task]!) this.#put(visit);
    }
    this.#left.forEach((left, task) => {
      if (left > 0) this.#pool.push(task);
    });
  }

  get visits(): Visit[] {
    return this.#own.flat();
  }

  get isDone(): boolean {
    return this.#pool.length === 0 && this.#used <= this.#most;
  }

  /** Empties a window. */
  clear(window: number): void {
    for (const visit of [...this.#within[window]!]) this.#out(visit);
  }

  /** Finds one piece without a place some; where all have one, in too many windows, one of these is emptied first. */
  step(): void {
    if (this.#pool.length === 0) for (const visit of this.#leastMissed()) this.#out(visit);
    const at = this.#random.below(this.#pool.length);
    const task = this.#problem.tasks[this.#pool[at]!]!;
    this.#pool.splice(at, 1);
    this.#fill(task);
    if (this.#left[task.index] === 0) return;
    this.#weights[task.index]! += 1;
    const opening = this.#cheapest(task);
    if (opening) {
      for (const visit of opening.out) this.#out(visit);
      this.#put(opening.visit);
    }
    if (this.#left[task.index]! > 0 && !this.#pool.includes(task.index))
      this.#pool.push(task.index);
    for (let i = 0; i < STIRRED; i += 1) this.#stir();
  }

  #put(visit: Visit): void {
    const { demands } = this.#problem.tasks[visit.task]!;
    for (const { supply, amount } of demands) {
      take(this.#free[supply]!, amount, visit.start, visit.end);
      this.#taking[supply]!.push(visit);
    }
    this.#own[visit.task]!.push(visit);
    this.#left[visit.task]! -= visit.units;
    this.#problem.effort.spent += 1 + demands.length;
    if (visit.window < 0) return;
    const within = this.#within[visit.window]!;
    if (within.length === 0) this.#used += 1;
    within.push(visit);
  }

  #remove(visit: Visit): void {
    const { demands } = this.#problem.tasks[visit.task]!;
    for (const { supply, amount } of demands) {
      take(this.#free[supply]!, -amount, visit.start, visit.end);
      drop(this.#taking[supply]!, visit);
    }
    drop(this.#own[visit.task]!, visit);
    this.#left[visit.task]! += visit.units;
    this.#problem.effort.spent += 1 + demands.length;
    if (visit.window < 0) return;
    const within = this.#within[visit.window]!;
    drop(within, visit);
    if (within.length === 0) this.#used -= 1;
  }

  #out(visit: Visit): void {
    this.#remove(visit);
    if (!this.#pool.includes(visit.task)) this.#pool.push(visit.task);
  }

  /** The earliest start of a task beside what it waits for, at any hand. */
  #from(task: Task, known = new Map<number, number>()): number {
    const before = known.get(task.index);
    if (before !== undefined) return before;
    const { effort, tasks } = this.#problem;
    effort.spent += 1 + task.before.length;
    let from = this.#heads[task.index]!;
    for (const tie of task.before) {
      const other = tasks[tie.task]!;
      const own = this.#own[tie.task]!;
      const left = this.#left[tie.task]!;
      let ready = Number.NEGATIVE_INFINITY;
      if (tie.fromStart) ready = own.length > 0 ? firstOf(own) : this.#from(other, known);
      else {
        ready = lastOf(own);
        if (left > 0) ready = Math.max(ready, this.#from(other, known) + visitMinutes(other, left));
      }
      from = Math.max(from, afterTie(tie, ready));
    }
    known.set(task.index, from);
    return from;
  }

  /** By when a task must begin and end beside what waits for it, at any hand. */
  #by(task: Task, known = new Map<number, Limits>()): Limits {
    const before = known.get(task.index);
    if (before) return before;
    const { effort, tasks } = this.#problem;
    effort.spent += 1 + task.after.length;
    let end = task.latestEnd ?? Number.POSITIVE_INFINITY;
    let begin = task.latestStart ?? Number.POSITIVE_INFINITY;
    for (const tie of task.after) {
      const other = tasks[tie.task]!;
      const left = this.#left[tie.task]!;
      let first = firstOf(this.#own[tie.task]!);
      if (left > 0) {
        const by = this.#by(other, known);
        first = Math.min(first, by.begin, by.end - visitMinutes(other, left));
      }
      const limit = beforeTie(tie, first);
      if (tie.fromStart) begin = Math.min(begin, limit);
      else end = Math.min(end, limit);
    }
    known.set(task.index, { begin, end });
    return { begin, end };
  }

  /** Places of so many units that put out nothing, one or two in each stretch. */
  #places(task: Task, units: number): Visit[] {
    const { effort } = this.#problem;
    const from = this.#from(task);
    const { begin, end } = this.#by(task);
    const minutes = visitMinutes(task, units);
    const own = this.#own[task.index]!;
    const places: Visit[] = [];
    effort.spent += 2;
    for (const slot of task.slots) {
      if (slot.start >= end) break;
      const start = Math.max(slot.start, from);
      const latest = Math.min(Math.min(slot.end, end) - minutes, begin);
      if (start > latest || !this.#isOpen(slot)) continue;
      effort.spent += 3 + 3 * task.demands.length;
      const at = this.#firstFree(task, start, minutes, latest);
      if (at > latest) continue;
      const visit = (begins: number): Visit => ({
        task: task.index,
        window: slot.window,
        start: begins,
        end: begins + minutes,
        units,
      });
      const isClear = ({ start: a, end: b }: Visit): boolean =>
        own.every((other) => other.end <= a || other.start >= b);
      const early = visit(at);
      if (isClear(early)) places.push(early);
      const last = latestAllFree(this.#free, task.demands, latest, minutes, at);
      if (last > at) {
        const late = visit(last);
        if (isClear(late)) places.push(late);
      }
    }
    return places;
  }

  #isOpen({ window }: Slot): boolean {
    return window < 0 || this.#within[window]!.length > 0 || this.#used < this.#most;
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
        }
      }
    }
    return at;
  }

  /** Places what is left of a task as far as nothing has to leave for it. */
  #fill(task: Task): void {
    let units = this.#left[task.index]!;
    while (units > 0) {
      const places = this.#places(task, units);
      if (places.length > 0) {
        this.#put(places[this.#random.below(places.length)]!);
        units = Math.min(units, this.#left[task.index]!);
      } else units -= 1;
    }
  }

  /** Puts a piece elsewhere. */
  #stir(): void {
    const task = this.#problem.tasks[this.#random.below(this.#problem.tasks.length)]!;
    const own = this.#own[task.index]!;
    if (own.length === 0) return;
    if (own.length > 1 && this.#random.below(2) === 0) return this.#pack(task);
    const visit = own[this.#random.below(own.length)]!;
    this.#remove(visit);
    const places = this.#places(task, visit.units);
    this.#put(places.length > 0 ? places[this.#random.below(places.length)]! : visit);
  }

  /** Does all there is of a piece of repeated work in other visits. */
  #pack(task: Task): void {
    const left = this.#left[task.index]!;
    const before = [...this.#own[task.index]!];
    for (const visit of before) this.#remove(visit);
    this.#fill(task);
    if (this.#left[task.index]! <= left) return;
    for (const visit of [...this.#own[task.index]!]) this.#remove(visit);
    for (const visit of before) this.#put(visit);
  }

  #weightOf(out: Iterable<Visit>): number {
    let sum = 0;
    for (const { task } of out) sum += this.#weights[task]!;
    return sum;
  }

  /** The place for what is left of a task for which the least has to leave. */
  #cheapest(task: Task): Opening | undefined {
    const { effort } = this.#problem;
    const head = this.#heads[task.index]!;
    const { latestEnd = Number.POSITIVE_INFINITY } = task;
    let victims: readonly Visit[] | undefined;
    let best: Opening | undefined;
    let least = Number.POSITIVE_INFINITY;
    let alike = 0;
    for (const slot of task.slots) {
      if (slot.start >= latestEnd || effort.isCut()) break;
      const from = Math.max(slot.start, head);
      const to = Math.min(slot.end, latestEnd);
      let units = this.#left[task.index]!;
      while (units > 0 && visitMinutes(task, units) > to - from) units -= 1;
      if (units === 0) continue;
      const minutes = visitMinutes(task, units);
      const must = this.#isOpen(slot) ? [] : (victims ??= this.#leastMissed());
      const near = task.demands.map(({ supply }) =>
        this.#taking[supply]!.filter(({ start, end }) => start < to && end > from),
      );
      effort.spent +=
        2 + (task.demands.reduce((sum, { supply }) => sum + this.#taking[supply]!.length, 0) >> 2);
      const starts = new Set([from, to - minutes]);
      for (const some of near)
        for (const { start, end } of some) {
          if (end > from && end <= to - minutes) starts.add(end);
          if (start - minutes >= from && start <= to) starts.add(start - minutes);
        }
      for (const start of starts) {
        const out = this.#leaving(task, near, start, start + minutes, must, least);
        if (!out) continue;
        const weight = this.#weightOf(out) + (this.#left[task.index]! - units) * 0.5;
        if (weight > least) continue;
        alike = weight < least ? 1 : alike + 1;
        least = weight;
        if (this.#random.below(alike) > 0) continue;
        best = {
          visit: { task: task.index, window: slot.window, start, end: start + minutes, units },
          out,
        };
      }
    }
    return best;
  }

  /** All work of the window of which that is missed least. */
  #leastMissed(): readonly Visit[] {
    let best: readonly Visit[] = [];
    let least = Number.POSITIVE_INFINITY;
    for (const within of this.#within) {
      if (within.length === 0) continue;
      const weight = this.#weightOf(within);
      if (weight < least) [best, least] = [within, weight];
    }
    return [...best];
  }

  /** What has to leave for a task between two moments; `undefined`: that is not enough, or weighs more than `most`. */
  #leaving(
    task: Task,
    near: readonly (readonly Visit[])[],
    start: number,
    end: number,
    must: readonly Visit[],
    most: number,
  ): Set<Visit> | undefined {
    const { effort } = this.#problem;
    const out = new Set(must);
    effort.spent += 4 + must.length;
    for (const own of this.#own[task.index]!) if (own.start < end && own.end > start) out.add(own);
    this.#leaveBefore(task, start, out);
    this.#leaveAfter(task, start, end, out);
    if (this.#weightOf(out) > most) return undefined;
    for (let i = 0; i < task.demands.length; i += 1) {
      const { supply, amount } = task.demands[i]!;
      const profile = this.#free[supply]!;
      const { at, free } = profile;
      const some = near[i]!;
      const over = some.filter((visit) => visit.start < end && visit.end > start);
      effort.spent += 1 + (some.length >> 1);
      let k = indexAt(profile, start);
      // A level may go on where one piece ends and another begins: each of these moments is looked at.
      const moments = [start];
      for (const visit of over) {
        if (visit.start > start) moments.push(visit.start);
        if (visit.end < end) moments.push(visit.end);
      }
      for (let next = k + 1; next < at.length && at[next]! < end; next += 1)
        moments.push(at[next]!);
      moments.sort((a, b) => a - b);
      effort.spent += moments.length >> 1;
      for (const moment of moments) {
        while (k + 1 < at.length && at[k + 1]! <= moment) k += 1;
        let level = free[k]!;
        if (level >= amount) continue;
        const here = over.filter((visit) => visit.start <= moment && visit.end > moment);
        const amountOf = (visit: Visit): number =>
          this.#problem.tasks[visit.task]!.demands.find((need) => need.supply === supply)!.amount;
        for (const visit of here) if (out.has(visit)) level += amountOf(visit);
        while (level < amount) {
          let pick: Visit | undefined;
          for (const visit of here) {
            if (out.has(visit)) continue;
            if (!pick || this.#weights[visit.task]! < this.#weights[pick.task]!) pick = visit;
          }
          if (!pick) return undefined;
          out.add(pick);
          level += amountOf(pick);
        }
      }
      if (this.#weightOf(out) > most) return undefined;
    }
    return out;
  }

  /** What a task waits for and is too late for it, to so many hands. */
  #leaveBefore(task: Task, start: number, out: Set<Visit>, hands = HANDS): void {
    this.#problem.effort.spent += task.before.length;
    for (const tie of task.before) {
      const limit = beforeTie(tie, start);
      const other = this.#problem.tasks[tie.task]!;
      const own = this.#own[tie.task]!;
      let left = this.#left[tie.task]!;
      const isBegun = tie.fromStart && own.length > 0 && firstOf(own) <= limit;
      for (const visit of own)
        if (tie.fromStart ? !isBegun : visit.end > limit) {
          out.add(visit);
          left += visit.units;
        }
      if (left === 0 || isBegun || hands === 1) continue;
      const begin = tie.fromStart ? limit : limit - visitMinutes(other, left);
      this.#leaveBefore(other, begin, out, hands - 1);
    }
  }

  /** What waits for a task and comes too soon, to so many hands. */
  #leaveAfter(task: Task, start: number, end: number, out: Set<Visit>, hands = HANDS): void {
    this.#problem.effort.spent += task.after.length;
    for (const tie of task.after) {
      const ready = afterTie(tie, tie.fromStart ? start : end);
      const other = this.#problem.tasks[tie.task]!;
      let left = this.#left[tie.task]!;
      for (const visit of this.#own[tie.task]!)
        if (visit.start < ready) {
          out.add(visit);
          left += visit.units;
        }
      if (left === 0 || hands === 1) continue;
      this.#leaveAfter(other, ready, ready + visitMinutes(other, left), out, hands - 1);
    }
  }
}

function drop(list: Visit[], visit: Visit): void {
  const at = list.indexOf(visit);
  list[at] = list.at(-1)!;
  list.pop();
}

const firstOf = (visits: readonly Visit[]): number =>
  visits.reduce((first, { start }) => Math.min(first, start), Number.POSITIVE_INFINITY);

const lastOf = (visits: readonly Visit[]): number =>
  visits.reduce((last, { end }) => Math.max(last, end), Number.NEGATIVE_INFINITY);
