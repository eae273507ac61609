import { Board, compareScores, headsOf, tailsOf, type Problem, type Score } from '../fit/index.js';
import { decode, type Recipe } from './decode.js';
import { createRandom, type Random } from '../random.js';
import { candidateOf, fullScoreOf, type Candidate, type Goal } from './objectives.js';

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
  const caps = problem.tasks.map(() => 0);
  const allowed = new Uint8Array(problem.windows.length).fill(1);
  let best: Attempt | undefined;
  for (const weights of rules) {
    const attempt = attemptOf(problem, { weights, caps, allowed }, options.goal);
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
  const board = decode(problem, recipe);
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
  return { weights, caps: problem.tasks.map(() => 0), allowed };
}

/** Changes a good answer again and again and keeps what is no worse, until stopped or nothing better is possible. */
export function improve(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  const random = createRandom(options.seed);
  let best = from;
  let current = from;
  let idle = 0;
  const { bound, enough } = options;
  while (compareScores(best.score, bound) > 0 && !options.stop()) {
    if (enough && compareScores(best.score, enough) < 0) break;
    const recipe = changed(problem, current, random);
    const next = noWorse(problem, recipe, current.score, options);
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
      let kicked: Recipe = best.recipe;
      for (let i = 0; i < 4; i += 1) kicked = changed(problem, { ...best, recipe: kicked }, random);
      current = attemptOf(problem, kicked, options.goal);
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
  for (let at = 0; compareScores(best.score, options.bound) > 0 && !options.stop(); at += 1) {
    const recipe = changed(problem, current, random);
    const slot = at % MEMORY;
    const known = compareScores(before[slot]!, current.score) > 0 ? before[slot]! : current.score;
    const next = noWorse(problem, recipe, known, options);
    if (next) current = next;
    before[slot] = current.score;
    if (compareScores(current.score, best.score) < 0) {
      best = current;
      options.onBetter?.(best);
    }
  }
  return best;
}

/** What a recipe comes to where that is no worse than some score; where more is late it is given up half made. */
function noWorse(
  problem: Problem,
  recipe: Recipe,
  than: Score,
  { goal, bound }: ImproveOptions,
): Attempt | undefined {
  // Where no more can be placed, more minutes late are never better, however it ends.
  const full = than[0]! <= bound[0]! && than[1]! <= bound[1]!;
  const counts = full && goal.order === 'late-finish' && goal.ahead > 0;
  const board = decode(problem, recipe, counts ? than[2]! : Number.POSITIVE_INFINITY);
  if (!board) return undefined;
  const score = fullScoreOf(board, goal);
  return compareScores(score, than) <= 0 ? { recipe, score, visits: board.visits } : undefined;
}

/** A recipe one step away. */
function changed(problem: Problem, from: Attempt, random: Random): Recipe {
  const { weights, caps, allowed } = from.recipe;
  const n = weights.length;
  const kind = random.below(10);
  if (kind === 0 && allowed.length > 1) {
    // A window in use is left out, or one left out comes back.
    const next = allowed.slice();
    const used = from.visits.flatMap((visit) => (visit.window < 0 ? [] : [visit.window]));
    if (used.length > 0 && random.below(2) === 0) next[used[random.below(used.length)]!] = 0;
    else next[random.below(next.length)] = 1;
    return { weights, caps, allowed: next };
  }
  if (kind === 1) {
    const split = problem.tasks.filter((task) => task.units > 1);
    const task = split[random.below(Math.max(1, split.length))];
    if (task) {
      const next = caps.slice();
      next[task.index] = random.below(task.units);
      return { weights, caps: next, allowed };
    }
  }
  const next = weights.slice();
  const a = random.below(n);
  const b = random.below(n);
  if (kind < 6) {
    next[a] = weights[b]!;
    next[b] = weights[a]!;
  } else next[a] = weights[b]! + (kind < 8 ? -1e-3 : 1e-3) * (1 + random.below(1000) / 1000);
  return { weights: next, caps, allowed };
}
