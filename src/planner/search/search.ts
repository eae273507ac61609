import { compareScores, type Problem, type Score } from '../fit/index.js';
import { createRandom, type Random } from '../random.js';
import type { Recipe } from './decode.js';
import { canEject } from './eject.js';
import { exchanged } from './exchange.js';
import { exhaust } from './exhaust.js';
import { dropWindows, fewerWindows } from './fewer-windows.js';
import {
  attemptOf,
  construct,
  improve,
  improveSlowly,
  recipeOf,
  type Attempt,
  type ImproveOptions,
} from './improve.js';
import { windowsIn, withWindows, type Candidate, type Goal } from './objectives.js';
import { solveOneWindow, type InOneWindow } from './one-window.js';
import { openProblem } from './pins.js';
import { crossed } from './steps.js';
import { tightenBounds } from '../bounds/tighten.js';

/** Up to so many tasks every schedule is looked at, time allowing. */
const EXACT_TASKS = 12;

/** Above so many tasks, bounds and searches in fewer windows have a smaller part of the time. */
const MANY_TASKS = 100;

/** Parts of what is left of the time in which an answer is improved before its bounds are looked at again. */
const SHARES = [0.5, 1];
/** Part of each of them for fewer windows, where another value is open. */
const FEWER = 0.8;
/** Part of the steps after the first answers in which work changes places. */
const EXCHANGED = 0.5;

/** How often the search in a smaller set of windows not yet proven infeasible may ask whether to stop. */
const HELD_TURNS = 800;

/** An answer with what is known of it. */
export interface Found extends Candidate {
  readonly bound: Score;
  /** How many leading values of the score are proven best by having looked at everything. */
  readonly proven: number;
}

export interface SearchOptions {
  readonly seed: number;
  readonly onBetter: (better: Candidate) => void;
  /** An answer that is known already. */
  readonly from?: Candidate;
}

/**
 * The best found in the steps there are, with bounds; done sooner where the two meet in every value.
 *
 * @param known Values that no answer beats.
 */
export function search(
  problem: Problem,
  goal: Goal,
  known: Score,
  { seed, onBetter, from: given }: SearchOptions,
): Found {
  if (problem.tasks.length === 0) return { visits: [], score: known, bound: known, proven: 5 };
  const { effort } = problem;
  // Where some work must be left out the rest may finish sooner than all of it.
  const alone = given || known[0] !== 0 ? undefined : solveOneWindow(problem, seed);
  const { raised, candidate } = knownIn(alone, goal, known);
  if (candidate && compareScores(candidate.score, raised) <= 0) {
    effort.firstPlanMade();
    return { ...candidate, bound: raised, proven: 0 };
  }
  const from = given ?? candidate;

  let bound = raised;
  const done = (): boolean => compareScores(best.score, bound) <= 0;
  const until = (share: number) => effort.until(share);
  let turn = 0;
  const settings = () => ({ goal, bound, seed: seed + turn, onBetter });
  const built = construct(problem, { ...settings(), stop: () => effort.isCut() });
  effort.firstPlanMade();
  // Windows and proofs have their time once the values before them have come to rest.
  const few = problem.tasks.length <= EXACT_TASKS;
  const isHeadBest = (score: Score): boolean =>
    score.every((value, i) => i >= 2 + goal.ahead || value <= bound[i]!);
  let best: Attempt =
    from && isHeadBest(from.score)
      ? withRecipe(problem, from)
      : few
        ? built
        : early(problem, built, from && withRecipe(problem, from), goal, settings);
  if (!few && canEject(problem) && !isHeadBest(best.score))
    best = exchanged(problem, best, { ...settings(), stop: until(EXCHANGED) });
  best = dropWindows(problem, best, { ...settings(), stop: until(0.3) });
  if (from && compareScores(from.score, best.score) <= 0) best = withRecipe(problem, from);
  onBetter(best);
  // Bounds hang on the values before the count of windows: where these are the same, they are.
  let sharpFor: Score | undefined;
  const sharpened = (share: number): void => {
    const ahead = best.score.slice(0, 2 + goal.ahead);
    if (sharpFor && compareScores(ahead, sharpFor) === 0) return;
    sharpFor = ahead;
    const sharp = tightenBounds(problem, goal, best, bound, share);
    bound = sharp.bound;
    if (compareScores(sharp.best.score, best.score) < 0) {
      best = withRecipe(problem, sharp.best);
      onBetter(best);
    }
    const end = until(share);
    for (const windows of sharp.open) {
      let turns = 0;
      const stop = (): boolean => (turns += 1) > HELD_TURNS || end();
      if (!end()) best = fewerWindows(problem, best, { ...settings(), stop }, windows);
    }
  };
  const open = openProblem(problem).tasks.filter((task) => task.units > 0).length;
  // Proofs take longer and come to less the more there is: a large plan is better served by changes.
  const lot = Math.min(1, MANY_TASKS / open);
  if (!done()) sharpened(0.2 * lot);
  if (done()) return { ...best, bound, proven: 0 };

  if (open <= EXACT_TASKS) {
    let turns = 0;
    const warm = improve(problem, best, { ...settings(), stop: () => (turns += 1) > 60 });
    const all = exhaust(problem, warm, { goal, bound, stop: until(0.7) });
    if (all.proven === 5) return { ...all, bound };
    const more = improve(problem, best, { ...settings(), stop: until(1) });
    return compareScores(more.score, all.score) < 0
      ? { ...more, bound, proven: 0 }
      : { ...all, bound };
  }
  // Bounds depend on what is found, and the other way round: each has its turns.
  for (const share of SHARES) {
    turn += 1;
    const isOpen = best.score.some((value, i) => i < 2 + goal.ahead && value > bound[i]!);
    const end = until(share);
    const stop = isOpen || goal.ahead < 2 ? until(FEWER * share) : end;
    best = fewerWindows(problem, best, { ...settings(), stop });
    best = improve(problem, best, { ...settings(), stop: end });
    if (!done()) sharpened(0.4 * lot);
    if (done()) break;
  }
  return { ...best, bound, proven: 0 };
}

const withRecipe = (problem: Problem, answer: Candidate): Attempt => ({
  ...answer,
  recipe: recipeOf(problem, answer),
});

/** Part of all steps in which answers are bettered by themselves, and steps that one takes at the least, by task and task. */
const ALONE = 0.25;
const LEAST = 10;
/** The most answers that are kept beside one another. */
const ANSWERS = 10;
/** Part of the steps of one of them in which a mixture is bettered. */
const MIXED = 0.8;
/** Parts of all steps that this takes at the most, and that may go by while none of the answers is put out by a better one. */
const EARLY = 0.7;
const IDLE = 0.15;
/** So many answers that come to no better than one before, and to no worse, are enough. */
const ALIKE = 3;
/** How much worse an answer may be for a while, see `improveSlowly`: by itself, and as a mixture. */
const WARMTH = { alone: 1, mixed: 0.3 };

/**
 * Betters what is placed and how late it is: some answers by themselves, then what comes of two of them, until nothing more
 * does.
 */
function early(
  problem: Problem,
  built: Attempt,
  given: Attempt | undefined,
  goal: Goal,
  settings: () => Pick<ImproveOptions, 'goal' | 'bound' | 'seed' | 'onBetter'>,
): Attempt {
  const { effort } = problem;
  const { seed, bound, onBetter } = settings();
  const length = Math.max(3, 2 + goal.ahead);
  const head = ({ score }: Candidate): Score => score.slice(0, length);
  const steps = ALONE * (effort.limit - effort.spent);
  const least = LEAST * problem.tasks.length ** 2;
  const count = Math.max(1, Math.min(ANSWERS, Math.floor(steps / least)));
  const over = effort.until(EARLY);
  const random = createRandom(seed);
  let best = given && compareScores(given.score, built.score) < 0 ? given : built;
  const isDone = (): boolean => over() || compareScores(head(best), bound.slice(0, length)) <= 0;
  let turn = 0;
  const bettered = (from: Attempt, some: number, warm: number): Attempt => {
    turn += 1;
    const options = {
      goal,
      bound,
      seed: 1000 * seed + turn,
      stop: over,
      onBetter: (next: Candidate): void => {
        if (compareScores(next.score, best.score) < 0) onBetter?.(next);
      },
    };
    const next = improveSlowly(problem, from, options, some, warm);
    if (compareScores(next.score, best.score) < 0) best = next;
    return next;
  };
  const answers: Attempt[] = [];
  let alike = 0;
  while (answers.length < count && alike < ALIKE && !isDone()) {
    const before = head(best);
    const next = bettered(built, steps / count, WARMTH.alone);
    alike = compareScores(head(next), before) === 0 ? alike + 1 : 0;
    answers.push(next);
  }
  // What is known already is one of them, so that a longer search sets out from what a shorter one found.
  if (given) answers.push(given);
  let gained = effort.spent;
  const idle = (IDLE / ALONE) * steps;
  while (alike < ALIKE && effort.spent < gained + idle && !isDone()) {
    const one = answers[random.below(answers.length)]!;
    const other = answers[random.below(answers.length)]!;
    const mixed = attemptOf(problem, mixtureOf(one.recipe, other.recipe, random), goal);
    const next = bettered(mixed, (MIXED * steps) / count, WARMTH.mixed);
    const worst = answers.reduce((a, b) => (compareScores(b.score, a.score) > 0 ? b : a));
    const isNew = answers.every(({ score }) => compareScores(score, next.score) !== 0);
    if (isNew && compareScores(next.score, worst.score) < 0) {
      answers[answers.indexOf(worst)] = next;
      if (compareScores(head(next), head(worst)) < 0) gained = effort.spent;
    }
  }
  return best;
}

/** The list of one recipe up to a place, and what is left in the order of another. */
function mixtureOf(one: Recipe, other: Recipe, random: Random): Recipe {
  return {
    steps: crossed(one.steps, other.steps, random.below(one.steps.length)),
    allowed: one.allowed.map((each, i) => each | other.allowed[i]!),
  };
}

/** What is known of work in one window, as a score and what none beats. */
function knownIn(
  alone: InOneWindow | undefined,
  goal: Goal,
  bound: Score,
): { readonly raised: Score; readonly candidate?: Candidate } {
  if (!alone) return { raised: bound };
  const finishAt = 2 + goal.objectives.filter((each) => each !== 'margins').indexOf('finish');
  const raised = bound.map((value, i) => (i === finishAt ? Math.max(value, alone.finish) : value));
  const { visits } = alone;
  if (!visits) return { raised };
  const last = visits.reduce((latest, visit) => Math.max(latest, visit.end), 0);
  const inner = goal.order === 'late-finish' ? [0, 0, 0, last] : [0, 0, last, 0];
  return { raised, candidate: { visits, score: withWindows(inner, windowsIn(visits), goal) } };
}
