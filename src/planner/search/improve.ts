import {
  Board,
  compareScores,
  headsOf,
  listBy,
  tailsOf,
  type Problem,
  type Score,
} from '../fit/index.js';
import { createRandom } from '../random.js';
import { aimOf, changed } from './changes.js';
import { Decoder, type Recipe } from './decode.js';
import { candidateOf, fullScoreOf, type Candidate, type Goal } from './objectives.js';
import { splitAsIn, stepsOf } from './steps.js';

export interface ImproveOptions {
  readonly goal: Goal;
  readonly seed: number;
  /** Values that no schedule beats: reaching them ends the search. */
  readonly bound: Score;
  readonly stop: () => boolean;
  /** An answer better than this ends `improve`. */
  readonly enough?: Score;
  readonly onBetter?: (candidate: Candidate) => void;
}

/** First answers by simple rules, so that there is one however little time there is. */
export function construct(problem: Problem, options: ImproveOptions): Attempt {
  const tails = tailsOf(problem);
  const heads = headsOf(new Board(problem));
  const amount = problem.tasks.map((task) =>
    task.demands.reduce((sum, need) => sum + need.amount * tails[task.index]!, 0),
  );
  const rules = [
    problem.tasks.map((task) => Math.min(1e9, task.due) - tails[task.index]!),
    tails.map((tail) => -tail),
    problem.tasks.map((task) => Math.min(1e9, heads.ends[task.index]!)),
    problem.tasks.map((task) => task.rank),
    problem.tasks.map((task) => task.slots.length),
    amount.map((each) => -each),
  ];
  const allowed = new Uint8Array(problem.windows.length).fill(1);
  let best: Attempt | undefined;
  for (const weights of rules) {
    const steps = stepsOf(problem, listBy(problem, weights));
    const attempt = attemptOf(problem, { steps, allowed }, options.goal);
    if (!best || compareScores(attempt.score, best.score) < 0) {
      best = attempt;
      options.onBetter?.(best);
    }
    if (compareScores(best.score, options.bound) <= 0 || options.stop()) break;
  }
  return best!;
}

/** A recipe with what it comes to. */
export interface Attempt extends Candidate {
  readonly recipe: Recipe;
}

export function attemptOf(problem: Problem, recipe: Recipe, goal: Goal): Attempt {
  const board = new Decoder(problem, goal).decode(recipe);
  return { recipe, ...candidateOf(board, goal) };
}

/** A recipe from which what is much like an answer comes again. */
export function recipeOf(problem: Problem, { visits }: Candidate): Recipe {
  const weights = problem.tasks.map(() => Number.MAX_SAFE_INTEGER);
  const allowed = new Uint8Array(problem.windows.length);
  for (const visit of visits) {
    weights[visit.task] = Math.min(weights[visit.task]!, visit.start);
    if (visit.window >= 0) allowed[visit.window] = 1;
  }
  const steps = stepsOf(problem, listBy(problem, weights));
  return { steps: splitAsIn(problem, steps, visits), allowed };
}

/** Changes a good answer again and again and keeps what is no worse, until stopped or nothing better is possible. */
export function improve(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  const random = createRandom(options.seed);
  let best = from;
  let current = from;
  let idle = 0;
  const { bound, enough } = options;
  const decoder = new Decoder(problem, options.goal);
  while (compareScores(best.score, bound) > 0 && !options.stop()) {
    if (enough && compareScores(best.score, enough) < 0) break;
    const recipe = changed(problem, current, aimOf(current.score, bound, options.goal), random);
    const next = noWorse(decoder, recipe, current.score, options);
    if (next) current = next;
    idle += 1;
    if (compareScores(current.score, best.score) < 0) {
      best = current;
      idle = 0;
      options.onBetter?.(best);
    }
    // Stuck: go on from the best with several changes at once.
    if (idle > 200) {
      idle = 0;
      const aim = aimOf(best.score, bound, options.goal);
      let kicked: Recipe = best.recipe;
      for (let i = 0; i < 4; i += 1)
        kicked = changed(problem, { ...best, recipe: kicked }, aim, random);
      current = { recipe: kicked, ...candidateOf(decoder.decode(kicked), options.goal) };
    }
  }
  return best;
}

/** Values back with which a change is compared. */
const MEMORY = 60;

/**
 * Changes an answer again and again and keeps what is no worse than it was some changes ago, until stopped: it goes down
 * more slowly than `improve`, and gets out of places where that one stays.
 *
 * @see Burke and Bykov, "The late acceptance hill-climbing heuristic", EJOR 258 (2017), from memory.
 */
export function improveLate(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  const random = createRandom(options.seed);
  const before: Score[] = Array.from({ length: MEMORY }, () => from.score);
  let best = from;
  let current = from;
  const decoder = new Decoder(problem, options.goal);
  for (let at = 0; compareScores(best.score, options.bound) > 0 && !options.stop(); at += 1) {
    const recipe = changed(
      problem,
      current,
      aimOf(current.score, options.bound, options.goal),
      random,
    );
    const slot = at % MEMORY;
    const known = compareScores(before[slot]!, current.score) > 0 ? before[slot]! : current.score;
    const next = noWorse(decoder, recipe, known, options);
    if (next) current = next;
    before[slot] = current.score;
    if (compareScores(current.score, best.score) < 0) {
      best = current;
      options.onBetter?.(best);
    }
  }
  return best;
}

/** What a recipe comes to where that is no worse than some score. */
function noWorse(
  decoder: Decoder,
  recipe: Recipe,
  than: Score,
  { goal }: ImproveOptions,
): Attempt | undefined {
  const board = decoder.decode(recipe, than);
  if (!board) return undefined;
  const score = fullScoreOf(board, goal);
  return compareScores(score, than) <= 0
    ? { recipe, score, visits: board.visits.slice() }
    : undefined;
}
