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
import { aimAt, aimOf, changed, type Aim } from './changes.js';
import { Decoder, type Recipe } from './decode.js';
import { candidateOf, fullScoreOf, type Candidate, type Goal } from './objectives.js';
import { heldAs } from './held.js';
import { rightJustified } from './justify.js';
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

/** One change in so many puts off all work as long as its values allow. */
const JUSTIFY = 50;

/** A change at random; or the order of an answer that is put off as long as its values up to the count of windows allow. */
function varied(problem: Problem, answer: Attempt, goal: Goal, aim: Aim, random: Random): Recipe {
  if (random.below(JUSTIFY) > 0) return changed(problem, answer, aim, random);
  const { allowed } = answer.recipe;
  return { steps: rightJustified(heldAs(problem, answer, goal), answer, allowed), allowed };
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
    const aim = aimOf(current.score, bound, options.goal);
    const recipe = varied(problem, current, options.goal, aim, random);
    const next = noWorse(decoder, recipe, current, current.score, options);
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
      const score = fullScoreOf(decoder.decode(recipe), options.goal);
      current = { recipe, score, visits: decoder.keep(recipe) };
    }
  }
  return best;
}

/** Of the minutes of the finish above their bound the part by which an answer may be worse at first, a day at most. */
const FINISH_WARMTH = 1 / 4;
const DAY = 1440;

/**
 * Changes an answer again and again and keeps what is worse by no more than it may be: ever less, down to nothing when its steps
 * are done. So it gets out of places where `improve` stays.
 *
 * @param steps How many it takes.
 * @param warm Of what is late above its bound, by date, the part by which an answer may be worse at first.
 * @see Dueck and Scheuer, "Threshold accepting", Journal of Computational Physics 90 (1990), from memory; here each change draws
 * its own threshold.
 */
export function improveSlowly(
  problem: Problem,
  from: Attempt,
  options: ImproveOptions,
  steps: number,
  warm: number,
): Attempt {
  const { goal, bound } = options;
  const { effort, dues } = problem;
  const random = createRandom(options.seed);
  const decoder = new Decoder(problem, goal);
  const warmth = from.score.map((value, i) => {
    const aim = aimAt(i, goal);
    const over = Math.max(0, value - bound[i]!);
    if (aim === 'late') return (warm * over) / Math.max(1, dues.length);
    return aim === 'finish' ? Math.min(DAY, FINISH_WARMTH * over) : 0;
  });
  const end = effort.spent + steps;
  let best = from;
  let current = from;
  while (effort.spent < end && compareScores(best.score, bound) > 0 && !options.stop()) {
    const left = (end - effort.spent) / steps;
    const open = current.score.findIndex((value, i) => value > bound[i]!);
    // The value that is open may be as good as it gets: then the next counts.
    const next = random.below(4) === 0 && open < 4 ? open + 1 : open;
    const at = Math.max(2, next);
    const by = (warmth[at]! * left ** 3 * random.below(1000)) / 1000;
    const than = current.score.map((value, i) =>
      i < at ? value : i === at ? value + by : Number.POSITIVE_INFINITY,
    );
    const recipe = varied(problem, current, goal, aimAt(next, goal), random);
    const answer = noWorse(decoder, recipe, current, than, options);
    if (!answer) continue;
    current = answer;
    if (compareScores(current.score, best.score) >= 0) continue;
    best = current;
    options.onBetter?.(best);
  }
  return best;
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
  current: Attempt,
  than: Score,
  { goal }: ImproveOptions,
): Attempt | undefined {
  const board = decoder.decodeNoWorse(recipe, than);
  if (board === 'same') return { ...current, recipe };
  if (!board) return undefined;
  const score = fullScoreOf(board, goal);
  return compareScores(score, than) <= 0
    ? { recipe, score, visits: decoder.keep(recipe) }
    : undefined;
}
