import { Board } from './board.js';
import { compareScores, scoreBound, scoreOf, searchAll, type Score } from './exact.js';
import type { Problem, Visit } from './problem.js';
import { headsOf } from './heads.js';
import { overdrawnMinutes } from './overdrawn.js';
import { boardOf, listBy, tailsOf } from './serial.js';

/** Up to so many tasks every order is tried before an answer is no. */
const EXACT_TASKS = 9;
const EXACT_NODES = 4000;

export interface SoloAnswer {
  readonly visits: readonly Visit[];
  readonly score: Score;
  /** Everything placed, nothing late. */
  readonly done: boolean;
}

/** The best found for a few tasks on their own: all placed, then on time, then soonest finished. */
export function solve(problem: Problem): SoloAnswer {
  const empty = new Board(problem);
  const bound = scoreBound(empty, 'late-finish');
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
  let visits: readonly Visit[] = best!.visits;
  const hopeless =
    isDone(score!) ||
    bound[0]! > 0 ||
    bound[2]! > 0 ||
    overdrawnMinutes(problem, headsOf(empty).starts) > 0;
  if (!hopeless && problem.tasks.length <= EXACT_TASKS) {
    let nodes = 0;
    const answer = searchAll(empty, {
      order: 'late-finish',
      below: [0, 0, 1, Number.NEGATIVE_INFINITY],
      enough: [0, 0, 0, Number.POSITIVE_INFINITY],
      stop: () => (nodes += 64) > EXACT_NODES,
    });
    if (answer.visits) {
      visits = answer.visits;
      score = answer.score;
    }
  }
  return { visits, score: score!, done: isDone(score!) };
}

function isDone(score: Score): boolean {
  return score[0] === 0 && score[2] === 0;
}
