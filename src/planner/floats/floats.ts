import { addMinutes } from '../../calendar/index.js';
import {
  beforeTie,
  copyOf,
  take,
  visitMinutes,
  type Problem,
  type Profile,
  type Task,
  type Visit,
} from '../fit/index.js';
import { latestAllFree } from '../problem/latest.js';
import type { ActivityFloat } from '../search/types.js';
import { slotsIn } from '../problem/board.js';
import { inOrder } from './in-order.js';
import type { Pusher } from './slip.js';

/**
 * How far each placed activity can slip.
 *
 * Earliest is where the plan has it. Latest is where it comes to when, from the last to the first, every activity is
 * moved as late as its window's usable time, its key date, its followers and the resources left over allow, in the
 * window where it is planned: so all can be at their latest at once. Late work has no float. Free float is what it
 * can slip with everything else left where it is. In a window that curfews or breaks cut up, both are counted in
 * usable minutes (`working`).
 */
export function floatsOf(
  problem: Problem,
  visits: readonly Visit[],
  pusher: Pusher,
): ActivityFloat[] {
  const late = new Slide(problem, visits);
  late.all();
  const still = new Slide(problem, visits);
  return problem.tasks.flatMap((task) => {
    const own = still.of(task);
    const latestOwn = late.of(task);
    const [first, last] = [own[0], own.at(-1)];
    if (!first || !last) return [];
    const alone = still.latestEnd(last);
    const counted = minuteCount(task, last);
    const free = counted.between(last.end, alone);
    const slip = pusher.isAble ? pusher.of(task.index) : Infinity;
    const latest = Math.max(latestOwn.at(-1)!.end, alone);
    // In one go its latest start and finish are one place.
    const latestStart = own.length > 1 ? latestOwn[0]!.start : latest - (last.end - last.start);
    const total = counted.between(last.end, latest);
    return [
      {
        activity: task.activity.id,
        earliestStart: addMinutes(problem.base, first.start),
        earliestFinish: addMinutes(problem.base, last.end),
        latestStart: addMinutes(problem.base, latestStart),
        latestFinish: addMinutes(problem.base, latest),
        totalFloatMinutes: total,
        freeFloatMinutes: free,
        floatIs: counted.is,
        critical: total === 0,
        ...(slip < Infinity && { slipMinutes: slip }),
      },
    ];
  });
}

/** How late each task can end in the window where it is, with all at their latest at once. */
export function lateEndsOf(problem: Problem, visits: readonly Visit[]): number[] {
  const late = new Slide(problem, visits);
  late.all();
  return problem.tasks.map((task) => late.of(task).at(-1)?.end ?? Number.NEGATIVE_INFINITY);
}

/** Minutes as float counts them where a visit is: usable ones when its window is cut up. */
function minuteCount(
  task: Task,
  visit: Visit,
): { is: 'working' | 'clock'; between: (from: number, to: number) => number } {
  const slots = slotsIn(task.slots, visit.window);
  if (task.outside || slots.length < 2)
    return { is: 'clock', between: (from, to) => Math.max(0, to - from) };
  return {
    is: 'working',
    between: (from, to) =>
      slots.reduce(
        (sum, slot) => sum + Math.max(0, Math.min(slot.end, to) - Math.max(slot.start, from)),
        0,
      ),
  };
}

/** Visits with what is left of the resources beside them. */
class Slide {
  readonly #problem: Problem;
  readonly #free: Profile[];
  readonly #finish: number;
  /** By task, in order of start. */
  readonly #visits: Visit[][];

  constructor(problem: Problem, visits: readonly Visit[]) {
    this.#problem = problem;
    this.#free = problem.supplies.map((supply) => copyOf(supply.profile));
    this.#finish = visits.reduce((last, visit) => Math.max(last, visit.end), 0);
    this.#visits = problem.tasks.map(() => []);
    for (const visit of visits.toSorted((a, b) => a.start - b.start)) {
      this.#visits[visit.task]!.push(visit);
      this.#use(visit, 1);
    }
  }

  of(task: Task): readonly Visit[] {
    return this.#visits[task.index]!;
  }

  /** Moves every visit as late as it goes, one after another from the last back. */
  all(): void {
    const order = inOrder(this.#problem, this.#visits.flat()).reverse();
    for (const visit of order) {
      const own = this.#visits[visit.task]!;
      const at = own.indexOf(visit);
      this.#use(visit, -1);
      own[at] = this.#latest(visit);
      this.#use(own[at], 1);
    }
  }

  /** The latest end of a visit when nothing else moves. */
  latestEnd(visit: Visit): number {
    this.#use(visit, -1);
    const { end } = this.#latest(visit);
    this.#use(visit, 1);
    return end;
  }

  #use(visit: Visit, sign: number): void {
    for (const { supply, amount } of this.#problem.tasks[visit.task]!.demands)
      take(this.#free[supply]!, sign * amount, visit.start, visit.end);
  }

  #latest(visit: Visit): Visit {
    const task = this.#problem.tasks[visit.task]!;
    const own = this.of(task);
    const minutes = visitMinutes(task, visit.units);
    const at = own.indexOf(visit);
    const done = own.reduce((sum, other) => sum + other.units, 0) === task.units;
    let end = task.outside ? this.#finish : Number.POSITIVE_INFINITY;
    end = Math.min(end, own[at + 1]?.start ?? end, Math.max(task.due, visit.end));
    let start = Number.POSITIVE_INFINITY;
    for (const tie of task.after) {
      const follower = this.#visits[tie.task]![0];
      if (!follower) continue;
      if (!tie.fromStart && done) end = Math.min(end, beforeTie(tie, follower.start));
      else if (tie.fromStart && at === 0) start = Math.min(start, beforeTie(tie, follower.start));
    }
    let best = visit.start;
    for (const slot of slotsIn(task.slots, visit.window)) {
      if (slot.end - minutes <= best) continue;
      const reach = Math.min(start, end - minutes, slot.end - minutes);
      const floor = Math.max(slot.start, best);
      const found = latestAllFree(this.#free, task.demands, reach, minutes, floor);
      if (found >= slot.start && found > best) best = found;
    }
    return { ...visit, start: best, end: best + minutes };
  }
}
