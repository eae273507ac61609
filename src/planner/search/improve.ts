import {
  Board,
  compareScores,
  headsOf,
  listBy,
  tailsOf,
  type Problem,
  type Score,
} from '../fit/index.js';
import { createRandom, type Random } from '../random.js';
import { aimOf, changed, type Aim } from './changes.js';
import { Decoder, type Recipe } from './decode.js';
import { candidateOf, fullScoreOf, type Candidate, type Goal } from './objectives.js';
import { splitAsIn, stepsOf } from './steps.js';

export interface ImproveOptions {
  readonly goal: Goal;
  readonly seed: number;
  /** Values that no schedule beats: reaching them ends the search. */
  readonly bound: Score;
  readonly stop: () => boolean;
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

/** Changes at once where a climber is stuck, at the least. */
const KICK = 4;

/** Changes a good answer again and again and keeps what is no worse, until stopped or nothing better is possible. */
export function improve(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  const random = createRandom(options.seed);
  let best = from;
  let current = from;
  let idle = 0;
  const { bound } = options;
  const decoder = new Decoder(problem, options.goal);
  while (compareScores(best.score, bound) > 0 && !options.stop()) {
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
      const recipe = changedOften(
        problem,
        best,
        KICK,
        aimOf(best.score, bound, options.goal),
        random,
      );
      current = { recipe, ...candidateOf(decoder.decode(recipe), options.goal) };
    }
  }
  return best;
}

/** Values that `improveLate` has passed by which it lets go of them. */
const MOST_PASSED = 1000;

/** How `improveLate` goes. */
export interface Pace {
  /** Steps by which it looks back. */
  readonly lag: number;
  /** Steps without gain after which it ends. */
  readonly idle: number;
  /** How many leading values count as gain. */
  readonly length: number;
}

/**
 * Changes an answer again and again and keeps what is no worse than it was some steps ago: it goes down more slowly than
 * `improve`, and gets out of places where that one stays.
 *
 * @see Burke and Bykov, "The late acceptance hill-climbing heuristic", EJOR 258 (2017), from memory; it counts changes.
 */
export function improveLate(
  problem: Problem,
  from: Attempt,
  options: ImproveOptions,
  { lag, idle, length }: Pace,
): Attempt {
  const random = createRandom(options.seed);
  const { effort } = problem;
  const past = [{ score: from.score, since: Number.NEGATIVE_INFINITY }];
  let at = 0;
  let best = from;
  let current = from;
  let gained = effort.spent;
  const decoder = new Decoder(problem, options.goal);
  while (compareScores(best.score, options.bound) > 0 && !options.stop()) {
    const now = effort.spent;
    if (now - gained > idle) break;
    while (at + 1 < past.length && past[at + 1]!.since <= now - lag) at += 1;
    // What lies further back is never looked at again.
    if (at > MOST_PASSED) {
      past.splice(0, at);
      at = 0;
    }
    const aim = aimOf(current.score, options.bound, options.goal);
    const recipe = changed(problem, current, aim, random);
    const before = past[at]!.score;
    const known = compareScores(before, current.score) > 0 ? before : current.score;
    const next = noWorse(decoder, recipe, known, options);
    if (!next) continue;
    if (compareScores(next.score, current.score) !== 0)
      past.push({ score: next.score, since: effort.spent });
    current = next;
    if (compareScores(current.score, best.score) >= 0) continue;
    const gain = compareScores(current.score.slice(0, length), best.score.slice(0, length));
    if (gain < 0) gained = effort.spent;
    best = current;
    options.onBetter?.(best);
  }
  return best;
}

/** An answer after many changes, whatever it is worth: one for so many steps of its recipe, and a few. */
export function kicked(
  problem: Problem,
  from: Attempt,
  { goal, bound, seed }: ImproveOptions,
): Attempt {
  const random = createRandom(seed);
  const changes = KICK + (from.recipe.steps.length >> 4);
  const aim = aimOf(from.score, bound, goal);
  return attemptOf(problem, changedOften(problem, from, changes, aim, random), goal);
}

/** The recipe of an answer after so many changes, each made as for that answer. */
function changedOften(
  problem: Problem,
  from: Attempt,
  times: number,
  aim: Aim,
  random: Random,
): Recipe {
  let { recipe } = from;
  for (let i = 0; i < times; i += 1) recipe = changed(problem, { ...from, recipe }, aim, random);
  return recipe;
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
