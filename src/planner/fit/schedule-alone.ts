import { Board } from '../problem/board.js';
import { decide } from './decide.js';
import { compareScores, scoreBound, scoreOf, type Score } from './exact.js';
import { isProvablyInfeasible } from './infeasible.js';
import type { Problem, Visit } from '../problem/problem.js';
import { boardOf, listBy, tailsOf } from '../problem/serial.js';

/** Places looked at before a search is given up, times the count of tasks: each costs about as much as it has tasks. */
const STEPS = 40_000;

export interface SoloAnswer {
  /** A way to do it all in time; empty where none was found. */
  readonly visits: readonly Visit[];
  /** Everything placed, nothing late. */
  readonly done: boolean;
  /** A no is certain: a bound shows it, or every way was looked at. A yes is. */
  readonly proven: boolean;
}

/** Whether a few tasks can all be placed in time on their own: first by bounds and simple rules, then by looking at every order. */
export function scheduleAlone(problem: Problem): SoloAnswer {
  const empty = new Board(problem);
  const bound = scoreBound(empty, 'late-finish');
  if (bound[0]! > 0 || bound[2]! > 0) return never;
  const tails = tailsOf(problem);
  const weights = [
    problem.tasks.map((task) => task.rank),
    tails.map((tail) => -tail),
    problem.tasks.map((task, i) => task.due - tails[i]!),
    problem.tasks.map((task) => -task.demands.reduce((sum, need) => sum + need.amount, 0)),
  ];
  let best: Board | undefined;
  let score: Score | undefined;
  for (const weight of weights) {
    const board = boardOf(problem, listBy(problem, weight));
    const its = scoreOf(board, 'late-finish');
    if (!score || compareScores(its, score) < 0) {
      best = board;
      score = its;
    }
    if (compareScores(score, bound) <= 0) break;
  }
  if (isDone(score!)) return { visits: best!.visits, done: true, proven: true };
  if (isProvablyInfeasible(empty)) return never;
  const decision = decide(problem, Math.max(200, Math.floor(STEPS / problem.tasks.length)));
  if (decision.visits) return { visits: decision.visits, done: true, proven: true };
  return decision.exhausted ? never : open;
}

const never: SoloAnswer = { visits: [], done: false, proven: true };
const open: SoloAnswer = { visits: [], done: false, proven: false };

function isDone(score: Score): boolean {
  return score[0] === 0 && score[2] === 0;
}
