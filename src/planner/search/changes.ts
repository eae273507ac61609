import { afterTie, type Problem, type Score, type Tie } from '../fit/index.js';
import { slotsIn } from '../problem/board.js';
import type { Random } from '../random.js';
import type { Recipe } from './decode.js';
import type { Candidate, Goal } from './objectives.js';
import { moved, near, splitAnew, type Step, type Steps } from './steps.js';

/** What a change is made for: the first value that may still be better, or to place more in windows that stay the same. */
export type Aim = 'placed' | 'late' | 'finish' | 'windows' | 'held';

export function aimOf(score: Score, bound: Score, goal: Goal): Aim {
  return aimAt(
    score.findIndex((value, i) => value > bound[i]!),
    goal,
  );
}

/** What a change is made for that is to better one value of a score. */
export function aimAt(at: number, { order, ahead }: Goal): Aim {
  const names: Aim[] = order === 'late-finish' ? ['late', 'finish'] : ['finish', 'late'];
  names.splice(ahead, 0, 'windows');
  return at < 2 ? 'placed' : names[at - 2]!;
}

/** What a recipe comes to. */
export interface Tried extends Pick<Candidate, 'visits'> {
  readonly recipe: Recipe;
}

/** A recipe one step away from that of an answer: in the same windows, too, where the aim is to place work in these. */
export function changed(
  problem: Problem,
  { recipe, visits }: Tried,
  aim: Aim,
  random: Random,
): Recipe {
  const { steps, allowed } = recipe;
  const n = steps.length;
  if (n === 0) return recipe;
  const kind = random.below(20);
  if (kind < (aim === 'windows' ? 4 : 1) && aim !== 'held' && allowed.length > 1) {
    // A window in use is left out, or one left out comes back.
    const next = allowed.slice();
    const used = visits.flatMap((visit) => (visit.window < 0 ? [] : [visit.window]));
    if (used.length > 0 && random.below(2) === 0) next[used[random.below(used.length)]!] = 0;
    else next[random.below(next.length)] = 1;
    return { steps, allowed: next };
  }
  if (kind < 3 || kind === 4) {
    const next = splitAnew(problem, steps, random);
    if (next !== steps) return { steps: next, allowed };
  }
  // Of 20 changes three move all work of a date where some is late, and one elsewhere.
  const packages = aim === 'held' ? 0 : aim === 'late' ? 3 : 1;
  if (kind >= 14 && kind < 14 + packages && problem.dues.length > 1)
    return { steps: packageMoved(problem, steps, random), allowed };
  if (kind < 14 && aim !== 'windows') {
    const { task, rival } = heldUp(problem, visits, aim, random);
    const at = steps.findLastIndex(({ tasks }) => tasks.includes(task));
    const ahead = rival < 0 ? -1 : steps.findIndex(({ tasks }) => tasks.includes(rival));
    if (ahead >= 0 && ahead < at) {
      // The work goes before what is in its way, or that goes behind the work.
      const next =
        random.below(2) === 0
          ? moved(problem, steps, at, ahead, -1)
          : moved(problem, steps, ahead, at, 1);
      return { steps: next, allowed };
    }
    if (at > 0) return { steps: moved(problem, steps, at, near(at, n, -1, random), -1), allowed };
  }
  const from = random.below(n);
  const by = random.below(2) === 0 ? -1 : 1;
  return { steps: moved(problem, steps, from, near(from, n, by, random), by), allowed };
}

/** The steps with all work of one date moved forward, with what it waits for, or back, with what waits for it. */
function packageMoved(problem: Problem, steps: Steps, random: Random): Steps {
  const own = new Set(problem.dues[random.below(problem.dues.length)]!.tasks);
  const isOwn = (step: Step): boolean => step.tasks.some((task) => own.has(task));
  const by = random.below(2) === 0 ? -1 : 1;
  const first = by === -1 ? steps.findIndex(isOwn) : steps.findLastIndex(isOwn);
  if (first < 0) return steps;
  let to = near(first, steps.length, by, random);
  let next = steps;
  for (const step of by === -1 ? steps.filter(isOwn) : steps.toReversed().filter(isOwn)) {
    const from = next.indexOf(step);
    if (by * (to - from) > 0) next = moved(problem, next, from, to, by);
    to = next.indexOf(step) - by;
  }
  return next;
}

/** A piece of work that others hold up, with one that stands in its way; -1: none does. */
interface HeldUp {
  readonly task: number;
  readonly rival: number;
}

/**
 * A piece of work that is late or left out, or the last of all, or what one of these waits for, at any hand, with work in whose
 * place it could be done sooner.
 */
function heldUp(problem: Problem, visits: Candidate['visits'], aim: Aim, random: Random): HeldUp {
  const { tasks, dues, order } = problem;
  const starts = tasks.map(() => Number.POSITIVE_INFINITY);
  const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const { task, start, end } of visits) {
    starts[task] = Math.min(starts[task]!, start);
    ends[task] = Math.max(ends[task]!, end);
  }
  const lastOf = (some: readonly number[]): number =>
    some.reduce((last, task) => (ends[task]! > ends[last]! ? task : last), some[0]!);
  const late = dues.filter(({ tasks: own, due }) => own.some((task) => ends[task]! > due));
  const out =
    aim === 'placed' || aim === 'held'
      ? order.filter(
          (task) => ends[task] === Number.NEGATIVE_INFINITY && tasks[task]!.slots.length > 0,
        )
      : [];
  let at =
    out.length > 0 && random.below(4) > 0
      ? out[random.below(out.length)]!
      : late.length > 0 && aim !== 'finish' && random.below(4) > 0
        ? lastOf(late[random.below(late.length)]!.tasks)
        : lastOf(order);
  for (;;) {
    const { before } = tasks[at]!;
    const readyAt = (tie: Tie): number =>
      afterTie(tie, tie.fromStart ? starts[tie.task]! : ends[tie.task]!);
    if (random.below(2) === 0) {
      const from = before.reduce((latest, tie) => Math.max(latest, readyAt(tie)), -Infinity);
      const rivals = rivalsOf(problem, visits, at, from, ends[at]!);
      if (rivals.length > 0) return { task: at, rival: rivals[random.below(rivals.length)]! };
    }
    if (before.length === 0 || random.below(4) === 0) return { task: at, rival: -1 };
    const last = before.reduce((latest, tie) => (readyAt(tie) > readyAt(latest) ? tie : latest));
    at = random.below(4) > 0 ? last.task : before[random.below(before.length)]!.task;
  }
}

/** Work that takes what a task needs too, in a window in which that could be done between two moments. */
function rivalsOf(
  { tasks }: Problem,
  visits: Candidate['visits'],
  at: number,
  from: number,
  until: number,
): number[] {
  const { demands, slots } = tasks[at]!;
  const by = until === Number.NEGATIVE_INFINITY ? Number.POSITIVE_INFINITY : until;
  const rivals: number[] = [];
  for (const { task, window, start, end } of visits)
    if (
      end > from &&
      start < by &&
      task !== at &&
      tasks[task]!.demands.some(({ supply }) => demands.some((own) => own.supply === supply)) &&
      slotsIn(slots, window).some((slot) => slot.start < end && slot.end > Math.max(start, from))
    )
      rivals.push(task);
  return rivals;
}
