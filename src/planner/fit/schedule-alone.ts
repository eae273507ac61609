import { Board } from '../problem/board.js';
import { headsOf, type Heads } from '../problem/heads.js';
import type { Problem, Visit } from '../problem/problem.js';
import { boardOf, listBy, tailsOf } from '../problem/serial.js';
import { decide } from './decide.js';
import { boundFrom, compareScores, scoreOf, type Score } from './exact.js';
import { isProvablyInfeasible } from './infeasible.js';

/** Places looked at before a search is given up, times the count of tasks: each costs about as much as it has tasks. */
const STEPS = 40_000;

/** Whether everything can be placed with nothing late. */
export type SoloAnswer =
  | {
      readonly done: true;
      readonly proven: true;
      /** A way to do it all in time. */
      readonly visits: readonly Visit[];
      /** The earliest that each task could start and finish by itself. */
      readonly heads: Heads;
    }
  | {
      readonly done: false;
      /** A no is certain: a bound shows it, or every way was looked at. */
      readonly proven: boolean;
    };

export const certainNo: SoloAnswer = { done: false, proven: true };

/** Whether a few tasks can all be placed in time on their own: first by bounds and simple rules, then by looking at every order. */
export function scheduleAlone(problem: Problem): SoloAnswer {
  const empty = new Board(problem);
  const heads = headsOf(empty);
  const bound = boundFrom(empty, 'late-finish', heads);
  if (bound[0]! > 0 || bound[2]! > 0) return certainNo;
  const visits = byRules(problem, bound)?.visits;
  if (visits) return { visits, done: true, proven: true, heads };
  if (isProvablyInfeasible(empty, heads)) return certainNo;
  const decision = decide(problem, Math.max(200, Math.floor(STEPS / problem.tasks.length)));
  return decision.visits
    ? { visits: decision.visits, done: true, proven: true, heads }
    : { done: false, proven: decision.exhausted };
}

/** The best that comes of simple rules, where all of it is placed and nothing late. */
function byRules(problem: Problem, bound: Score): Board | undefined {
  let best: Board | undefined;
  let score: Score | undefined;
  for (const list of listsOf(problem)) {
    const board = boardOf(problem, list);
    const its = scoreOf(board, 'late-finish');
    if (!score || compareScores(its, score) < 0) {
      best = board;
      score = its;
    }
    if (compareScores(score, bound) <= 0) break;
  }
  return score?.[0] === 0 && score[2] === 0 ? best : undefined;
}

/** Lists by rank, longest chain behind, least time before it is late, and most asked for; no list twice. */
function* listsOf(problem: Problem): Generator<readonly number[]> {
  const { tasks } = problem;
  const first = listBy(
    problem,
    tasks.map((task) => task.rank),
  );
  yield first;
  if (isChain(problem)) return;
  const tails = tailsOf(problem);
  const known = [first];
  for (const weights of [
    tails.map((tail) => -tail),
    tasks.map((task, i) => task.due - tails[i]!),
    tasks.map((task) => -task.demands.reduce((sum, need) => sum + need.amount, 0)),
  ]) {
    const list = listBy(problem, weights);
    if (known.some((other) => list.every((task, at) => task === other[at]))) continue;
    known.push(list);
    yield list;
  }
}

/** Whether each task waits for the one before it, so that there is one list. */
function isChain({ tasks, order, clusters }: Problem): boolean {
  return (
    !clusters &&
    order.every(
      (index, at) => at === 0 || tasks[index]!.before.some((tie) => tie.task === order[at - 1]),
    )
  );
}
