import { compareScores, type Problem, type Visit } from '../fit/index.js';
import { goalOf } from '../search/objectives.js';
import { attemptOf, improve } from '../search/improve.js';
import { heldTo, type Split } from './pieces.js';

/** Changes tried for a plan with some pieces let go, while there may be none, and once one is known. */
const FIND_TURNS = 400;
const SHRINK_TURNS = 40;
const ROUNDS = 12;

/** A plan with nothing late, and the pieces that were let go for it. */
export interface LetGo {
  readonly freed: ReadonlySet<number>;
  readonly visits: readonly Visit[];
}

const goal = goalOf('key-dates');

/**
 * Lets go of what is in the way, more and more of it, until everything finds a place with nothing late; then takes back
 * what may stay after all (`takeBack`). `undefined` where that does not come about.
 *
 * @param split Each task with the date by which it must be finished.
 * @param weights In which order work is tried first.
 */
export function letGo(
  split: Split,
  forced: readonly number[],
  weights: readonly number[],
  stop: () => boolean,
): LetGo | undefined {
  const { pieces, problem } = split;
  const freed = new Set(forced);
  const pieceOf = new Map(pieces.map(({ task }, at) => [task, at]));
  const inWindow = new Map<number | undefined, number[]>();
  pieces.forEach(({ window }, at) => {
    inWindow.set(window, [...(inWindow.get(window) ?? []), at]);
  });
  for (let round = 0; round < ROUNDS && !stop(); round += 1) {
    const { visits, trouble } = tryWith(split, freed, weights, FIND_TURNS, stop);
    if (trouble.length === 0) return { freed, visits };
    const before = freed.size;
    for (const task of trouble) {
      const own = pieceOf.get(task);
      if (own !== undefined) freed.add(own);
    }
    if (freed.size > before) continue;
    // What is in trouble may go where it likes: then what lies about it, or waits with it, is in the way.
    for (const task of trouble) {
      const { before: waited, after } = problem.tasks[task]!;
      const near = [...waited, ...after].flatMap((tie) => pieceOf.get(tie.task) ?? []);
      const own = pieceOf.get(task);
      const beside = own === undefined ? [] : (inWindow.get(pieces[own]!.window) ?? []);
      for (const piece of [...near, ...beside]) freed.add(piece);
    }
    if (freed.size > before) continue;
    const windows = new Set(
      visits.filter(({ task }) => trouble.includes(task)).map(({ window }) => window),
    );
    for (const window of windows) for (const piece of inWindow.get(window) ?? []) freed.add(piece);
    if (freed.size === before) return undefined;
  }
  return undefined;
}

/**
 * The plan with as many of the pieces let go back in their windows as is found: many at once at first, then one by one.
 *
 * @param movedBy The pieces that leave their windows in a plan.
 */
export function takeBack(
  split: Split,
  from: LetGo,
  weights: readonly number[],
  movedBy: (visits: readonly Visit[]) => Set<number>,
  stop: () => boolean,
): LetGo {
  let best: LetGo = { ...from, freed: movedBy(from.visits) };
  for (let size = Math.ceil(best.freed.size / 2); size >= 1 && !stop();) {
    let shrunk = false;
    const open = [...best.freed];
    for (let at = 0; at < open.length && !stop(); at += size) {
      const some = open.slice(at, at + size).filter((piece) => best.freed.has(piece));
      if (some.length === 0) continue;
      const freed = new Set(best.freed);
      for (const piece of some) freed.delete(piece);
      // As it stands, so that what has moved stays where it went; and in the order in which it was.
      for (const order of [startsOf(split, best, some, weights), weights]) {
        const { visits, trouble } = tryWith(split, freed, order, SHRINK_TURNS, stop);
        if (trouble.length > 0) continue;
        best = { visits, freed: movedBy(visits) };
        shrunk = true;
        break;
      }
    }
    if (!shrunk || size > 1) {
      if (size === 1) break;
      size = Math.ceil(size / 2);
    }
  }
  return best;
}

/** Starts by task in a plan, but of some pieces as they were. */
function startsOf(
  { problem, pieces }: Split,
  { visits }: LetGo,
  some: readonly number[],
  weights: readonly number[],
): number[] {
  const starts = problem.tasks.map((_, index) => weights[index]!);
  for (const { task, start } of visits) starts[task] = start;
  for (const piece of some) starts[pieces[piece]!.task] = weights[pieces[piece]!.task]!;
  return starts;
}

/** A short search with some pieces free: a plan, and the tasks that it leaves out or has late. */
function tryWith(
  split: Split,
  freed: ReadonlySet<number>,
  weights: readonly number[],
  turns: number,
  stop: () => boolean,
): { readonly visits: readonly Visit[]; readonly trouble: readonly number[] } {
  const problem = dated(heldTo(split, freed));
  const caps = problem.tasks.map(() => 0);
  const allowed = new Uint8Array(problem.windows.length).fill(1);
  const bound = [0, 0, 0, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let found = attemptOf(problem, { weights, caps, allowed }, goal);
  let turn = 0;
  if (compareScores(found.score, bound) > 0)
    found = improve(problem, found, {
      goal,
      seed: 1,
      bound,
      stop: () => (turn += 1) > turns || stop(),
    });
  const left = problem.tasks.map((task) => task.units);
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of found.visits) {
    left[visit.task]! -= visit.units;
    ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  }
  const trouble = problem.tasks.flatMap(({ index, due }) =>
    left[index]! > 0 || ends[index]! > due ? [index] : [],
  );
  return { visits: found.visits, trouble };
}

/** The problem with the date of each task as one of its own, so that a search sees how late each is. */
function dated(problem: Problem): Problem {
  return {
    ...problem,
    dues: problem.tasks.flatMap(({ index, due, activity }) =>
      Number.isFinite(due) ? [{ package: activity.package, due, tasks: [index] }] : [],
    ),
  };
}
