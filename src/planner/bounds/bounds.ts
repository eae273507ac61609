import { unionOf, type IntervalSet } from '../../calendar/index.js';
import {
  areaFree,
  Board,
  firstFree,
  headsOf,
  scoreBound,
  visitMinutes,
  type Problem,
  type Score,
  type Slot,
  type Task,
} from '../fit/index.js';
import { withWindows, type Goal } from '../search/objectives.js';
import { openProblem, windowsKept } from '../search/pins.js';

/** A full score that no schedule beats. */
export function boundOf(problem: Problem, goal: Goal): Score {
  const score = [...scoreBound(new Board(problem), goal.order)];
  const finish = goal.order === 'late-finish' ? 3 : 2;
  if (score[0] === 0) score[finish] = Math.max(score[finish]!, energyFinish(openProblem(problem)));
  return withWindows(score, score[0] === 0 ? fewestWindows(problem) : 0, goal);
}

/** Minutes that a task takes at the least. */
const work = (task: Task): number => (task.units === 0 ? 0 : visitMinutes(task, task.units));

/** The slots of several tasks. Tasks with the same needs share theirs, which are looked at once. */
function slotsOf(tasks: readonly Task[]): Slot[] {
  return [...new Set(tasks.map((task) => task.slots))].flat();
}

/** The stretches of several tasks' slots in each window. */
function spansByWindow(problem: Problem, tasks: readonly Task[]): IntervalSet[] {
  const slots: Slot[][] = problem.windows.map(() => []);
  for (const slot of slotsOf(tasks)) slots[slot.window]!.push(slot);
  return slots.map(unionOf);
}

/** No finish is sooner than when each resource has been there long enough for all that needs it. */
function energyFinish(problem: Problem): number {
  let finish = 0;
  problem.supplies.forEach(({ profile }, supply) => {
    const users = problem.tasks.filter((task) => task.units > 0 && amountOf(task, supply) > 0);
    let missing = 0;
    for (const task of users) missing += amountOf(task, supply) * work(task);
    const outside = users.some((task) => task.outside);
    // Outside work may be done before the plan begins, so it proves nothing here.
    if (users.length === 0 || outside) return;
    for (const { start, end } of unionOf(slotsOf(users))) {
      const area = areaFree(profile, start, end);
      if (area < missing) {
        missing -= area;
        continue;
      }
      // The last stretch is filled level by level.
      let at = start;
      while (missing > 0 && at < end) {
        at = firstFree(profile, Number.MIN_VALUE, at, 1);
        const next = nextChange(profile.at, at, end);
        const here = areaFree(profile, at, next);
        if (here >= missing) {
          at += Math.ceil((missing * (next - at)) / here);
          missing = 0;
        } else {
          missing -= here;
          at = next;
        }
      }
      finish = Math.max(finish, at);
      return;
    }
  });
  return finish;
}

function nextChange(at: readonly number[], after: number, end: number): number {
  return Math.min(end, at.find((moment) => moment > after) ?? end);
}

function amountOf(task: Task, supply: number): number {
  return task.demands.find((demand) => demand.supply === supply)?.amount ?? 0;
}

/** No schedule that places everything uses fewer windows. */
export function fewestWindows(whole: Problem): number {
  const problem = openProblem(whole);
  const kept = windowsKept(whole);
  const inside = problem.tasks.filter((task) => !task.outside && task.units > 0);
  if (inside.length === 0) return kept.size;
  let bound = Math.max(1, kept.size, apartWindows(whole, inside, kept));

  problem.supplies.forEach(({ profile }, supply) => {
    const users = inside.filter((task) => amountOf(task, supply) > 0);
    let energy = 0;
    for (const task of users) energy += amountOf(task, supply) * work(task);
    if (energy === 0) return;
    const areas = spansByWindow(problem, users).map((stretches) =>
      stretches.reduce((sum, interval) => sum + areaFree(profile, interval.start, interval.end), 0),
    );
    bound = Math.max(bound, countToReach(energy, areas, kept));
  });

  const spans = spansByWindow(problem, inside).map((stretches) =>
    stretches.reduce((sum, interval) => sum + interval.end - interval.start, 0),
  );
  return Math.max(bound, countToReach(longestChain(problem), spans, kept));
}

/** How many of the windows it takes to reach a total: those in use anyhow, then the largest amounts first. */
function countToReach(
  total: number,
  amounts: readonly number[],
  kept: ReadonlySet<number>,
): number {
  let missing = total;
  let count = kept.size;
  for (const window of kept) missing -= amounts[window]!;
  const others = amounts.filter((_, window) => !kept.has(window));
  for (const amount of others.sort((a, b) => b - a)) {
    if (missing <= 0) break;
    missing -= amount;
    count += 1;
  }
  return count;
}

/**
 * Tasks no two of which can share a window need a window each. As many such are taken as come to hand, those with
 * the fewest choices first; a window counts only where a visit fits after the task's earliest start.
 */
function apartWindows(problem: Problem, tasks: readonly Task[], kept: ReadonlySet<number>): number {
  const heads = headsOf(new Board(problem));
  const choices = tasks.map((task) => {
    const least = visitMinutes(task, 1);
    const from = Math.max(task.earliest, heads.starts[task.index]!);
    const possible = new Set<number>();
    for (const slot of task.slots)
      if (Math.max(slot.start, from) + least <= slot.end) possible.add(slot.window);
    return possible;
  });
  const taken = new Set(kept);
  let count = kept.size;
  for (const possible of choices.sort((a, b) => a.size - b.size)) {
    if (possible.size === 0 || [...possible].some((window) => taken.has(window))) continue;
    for (const window of possible) taken.add(window);
    count += 1;
  }
  return count;
}

/** The most minutes of inside work that must follow one another. */
function longestChain(problem: Problem): number {
  const reach = problem.tasks.map(() => 0);
  let longest = 0;
  for (const index of problem.order) {
    const task = problem.tasks[index]!;
    let before = 0;
    for (const tie of task.before) if (!tie.fromStart) before = Math.max(before, reach[tie.task]!);
    reach[index] = before + (task.outside ? 0 : work(task));
    longest = Math.max(longest, reach[index]);
  }
  return longest;
}
