import type { Problem, Score } from '../fit/index.js';
import type { Random } from '../random.js';
import type { Recipe } from './decode.js';
import type { Candidate, Goal } from './objectives.js';
import { moved, near, splitAnew } from './steps.js';

/** What a change is made for: the first value that may still be better, or to place more in windows that stay the same. */
export type Aim = 'placed' | 'late' | 'finish' | 'windows' | 'held';

export function aimOf(score: Score, bound: Score, { order, ahead }: Goal): Aim {
  const names: Aim[] = order === 'late-finish' ? ['late', 'finish'] : ['finish', 'late'];
  names.splice(ahead, 0, 'windows');
  const at = score.findIndex((value, i) => value > bound[i]!);
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
  if (kind < 10 && aim !== 'windows') {
    const task = heldUp(problem, visits, aim, random);
    const at = steps.findLastIndex(({ tasks }) => tasks.includes(task));
    if (at > 0) return { steps: moved(problem, steps, at, near(at, n, -1, random), -1), allowed };
  }
  const from = random.below(n);
  const by = random.below(2) === 0 ? -1 : 1;
  return { steps: moved(problem, steps, from, near(from, n, by, random), by), allowed };
}

/** A piece of work that is late or left out, or the last of all, or what one of these waits for, at first or second hand. */
function heldUp(
  { tasks, dues, order }: Problem,
  visits: Candidate['visits'],
  aim: Aim,
  random: Random,
): number {
  const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const { task, end } of visits) ends[task] = Math.max(ends[task]!, end);
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
  while (tasks[at]!.before.length > 0 && random.below(2) === 0) {
    const waited = tasks[at]!.before.map(({ task }) => task);
    at = random.below(2) === 0 ? lastOf(waited) : waited[random.below(waited.length)]!;
  }
  return at;
}
