import { compareScores, visitMinutes, type Problem } from '../fit/index.js';
import { createRandom, type Random } from '../random.js';
import { changed, type Tried } from './changes.js';
import { slotsIn } from '../problem/board.js';
import { canEject } from './eject.js';
import { inFewer } from './exchange.js';
import { Decoder, type Recipe } from './decode.js';
import { heldAs } from './held.js';
import { rightJustified } from './justify.js';
import { attemptOf, type Attempt, type ImproveOptions } from './improve.js';
import { usableWindows, usedBy, useOf, type Candidate, type Goal } from './objectives.js';
import { windowsKept } from './pins.js';

type Placed = Pick<Candidate, 'visits'>;

/** Leaves out one window after another, the least used first, as long as that makes the answer no worse. */
export function dropWindows(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  let best = from;
  const used = usedBy(from);
  const others = new Set(usableWindows(problem));
  for (const window of used) others.delete(window);
  for (const window of [...others, ...used]) {
    if (options.stop()) break;
    const allowed = best.recipe.allowed.slice();
    allowed[window] = 0;
    const next = attemptOf(problem, { ...best.recipe, allowed }, options.goal);
    if (compareScores(next.score, best.score) <= 0) best = next;
  }
  return best;
}

/** Values back with which a change is compared. */
const MEMORY = 100;
/** Changes without gain after which what is left out weighs more. */
const IDLE = 100;
/** One change in so many puts one window in the place of another. */
const SWAP = 4;
/** One change in so many puts off all work as long as it can be. */
const JUSTIFY = 20;
/** Windows of which the one is put in place that could take most. */
const CHOICES = 8;

interface Within extends Tried {
  /** Hours of work left out, by weight. */
  readonly lost: number;
}

/** Steps for one turn of each way to look for fewer windows: by task, and by task and task. */
const TURN = { pieces: 2500, lists: 25 };

/**
 * Looks for the same with one window less, and again, until stopped: by pieces that put out others and by lists, in turns.
 *
 * @param start Windows to begin with, fewer than the answer uses, for lists alone.
 */
export function fewerWindows(
  whole: Problem,
  from: Attempt,
  options: ImproveOptions,
  start?: readonly number[],
): Attempt {
  if (start || !canEject(whole)) return byLists(whole, from, options, start);
  const { effort } = whole;
  const at = 2 + options.goal.ahead;
  let best = from;
  const n = whole.tasks.length;
  let times = 1;
  for (let turn = 0; best.score[at]! > options.bound[at]! && !options.stop(); turn += 1) {
    const isByLists = turn % 2 === 0;
    const steps = isByLists ? TURN.lists * n * n : TURN.pieces * n;
    const end = effort.spent + times * steps;
    best = (isByLists ? byLists : inFewer)(whole, best, {
      ...options,
      seed: options.seed + turn,
      stop: () => effort.spent >= end || options.stop(),
    });
    if (!isByLists) times *= 2;
  }
  return best;
}

/**
 * Looks for the same with one window less, and again, until stopped. So many windows are allowed as are wanted, what would make
 * an earlier value worse is left out, and windows and the order of the work are changed until nothing is. What is left out again
 * and again weighs ever more.
 *
 * @param start The windows to begin with, fewer than the answer uses; without, those in use but for the one that is missed least.
 * @see Nagata and Bräysy, "A powerful route minimization heuristic for the vehicle routing problem with time windows", Operations
 * Research Letters 37 (2009), for weights of what is left out; from memory.
 */
function byLists(
  whole: Problem,
  from: Attempt,
  { goal, bound, seed, stop, onBetter }: ImproveOptions,
  start?: readonly number[],
): Attempt {
  const random = createRandom(seed);
  const at = 2 + goal.ahead;
  let best = from;
  let windows = start;
  while (best.score[at]! > bound[at]! && !stop()) {
    const known = best;
    let next: Attempt | undefined;
    const inFewer = new InFewer(whole, known, goal, random);
    for (const recipe of inFewer.found(windows, stop)) {
      const attempt = attemptOf(whole, recipe, goal);
      if (compareScores(attempt.score, known.score) >= 0) continue;
      next = attempt;
      break;
    }
    if (!next) break;
    best = next;
    windows = undefined;
    onBetter?.(best);
  }
  return best;
}

/** The search in one window less than an answer uses. */
class InFewer {
  readonly #known: Attempt;
  readonly #held: Problem;
  readonly #decoder: Decoder;
  readonly #random: Random;
  /** Windows that may be put in the place of one another. */
  readonly #free: readonly number[];
  /** Units of each task that the known answer leaves out. */
  readonly #out: readonly number[];
  /** Of one unit of each task, in hours. */
  readonly #weights: Float64Array;
  readonly #hours: Float64Array;

  constructor(whole: Problem, known: Attempt, goal: Goal, random: Random) {
    const kept = windowsKept(whole);
    this.#known = known;
    this.#held = heldAs(whole, known, goal);
    this.#decoder = new Decoder(this.#held, goal);
    this.#random = random;
    this.#free = usableWindows(whole).filter((window) => !kept.has(window));
    this.#out = leftBy(whole, known);
    this.#hours = Float64Array.from(
      whole.tasks,
      ({ units, perUnit, setUp }) => (1 + perUnit + setUp / Math.max(1, units)) / 60,
    );
    this.#weights = this.#hours.slice();
  }

  /** Recipes that leave out nothing which the known answer places. */
  *found(start: readonly number[] | undefined, stop: () => boolean): Generator<Recipe> {
    let current = this.#first(start);
    if (!current) return;
    const before = new Float64Array(MEMORY).fill(current.lost);
    let least = current.lost;
    let idle = 0;
    for (let at = 0; !stop(); at += 1) {
      const slot = at % MEMORY;
      const most = Math.max(before[slot]!, current.lost);
      const tried = this.#tryOut(this.#changed(current), most, current);
      if (tried) current = tried;
      before[slot] = current.lost;
      if (current.lost === 0) yield current.recipe;
      idle += 1;
      if (current.lost < least) {
        least = current.lost;
        idle = 0;
      } else if (idle > IDLE) {
        const left = leftBy(this.#held, current);
        this.#weights.forEach((weight, task) => {
          if (left[task]! > this.#out[task]!) this.#weights[task] = weight + this.#hours[task]! / 2;
        });
        current = { ...current, lost: this.#lostIn(current) };
        before.fill(current.lost);
        least = current.lost;
        idle = 0;
      }
    }
  }

  /** What is tried first: some windows, or those in use without the one that loses the least. */
  #first(start: readonly number[] | undefined): Within | undefined {
    const used = usedBy(this.#known);
    const choices = start
      ? [start]
      : used.flatMap((window) =>
          this.#free.includes(window) ? [used.filter((other) => other !== window)] : [],
        );
    let best: Within | undefined;
    for (const windows of choices) {
      const allowed = new Uint8Array(this.#held.windows.length);
      for (const window of windows) allowed[window] = 1;
      const { steps } = this.#known.recipe;
      const tried = this.#tryOut({ steps, allowed }, best?.lost ?? Infinity);
      if (tried && tried.lost < (best?.lost ?? Infinity)) best = tried;
    }
    return best;
  }

  #changed(current: Within): Recipe {
    const { steps, allowed } = current.recipe;
    if (this.#random.below(JUSTIFY) === 0)
      return { steps: rightJustified(this.#held, current, allowed), allowed };
    if (this.#random.below(SWAP) > 0) return changed(this.#held, current, 'held', this.#random);
    const any = (some: readonly number[]): number | undefined =>
      some[this.#random.below(some.length)];
    const ins = this.#free.filter((window) => allowed[window] === 1);
    const outs = this.#free.filter((window) => allowed[window] === 0);
    // Of two at random the one that is used less.
    const use = useOf(current);
    const [one, other] = [any(ins), any(ins)];
    const out = (use.get(one ?? -1) ?? 0) < (use.get(other ?? -1) ?? 0) ? one : other;
    if (out === undefined || outs.length === 0) return current.recipe;
    const back = this.#taking(
      current,
      out,
      Array.from({ length: CHOICES }, () => any(outs)!),
    );
    return { steps, allowed: allowed.with(out, 0).with(back, 1) };
  }

  /** Of some windows the one that could take most of the work that is left out or lies in another window. */
  #taking({ visits }: Within, out: number, choices: readonly number[]): number {
    const { tasks } = this.#held;
    const left = leftBy(this.#held, { visits });
    const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
    /** Units of each task that want a place. */
    const open = tasks.map((_, index) => Math.max(0, left[index]! - this.#out[index]!));
    for (const { task, window, end, units } of visits) {
      if (window === out) open[task]! += units;
      else ends[task] = Math.max(ends[task]!, end);
    }
    const taken = choices.map(() => 0);
    for (const task of tasks) {
      if (open[task.index] === 0) continue;
      const from = task.before.reduce(
        (latest, tie) => Math.max(latest, ends[tie.task]!),
        task.earliest,
      );
      const least = visitMinutes(task, 1);
      choices.forEach((window, i) => {
        const takes = slotsIn(task.slots, window).some(
          ({ start, end }) => Math.max(start, from) + least <= Math.min(end, task.latestEnd ?? end),
        );
        if (takes) taken[i]! += this.#weights[task.index]! * open[task.index]!;
      });
    }
    return choices[taken.indexOf(Math.max(...taken))]!;
  }

  #tryOut(recipe: Recipe, most: number, current?: Within): Within | undefined {
    const board = this.#decoder.decodeWithin(recipe, this.#weights, this.#out, most);
    if (board === 'same') return { ...current!, recipe };
    if (!board) return undefined;
    const visits = this.#decoder.keep(recipe);
    return { recipe, visits, lost: this.#lostIn({ visits }) };
  }

  #lostIn(answer: Placed): number {
    return leftBy(this.#held, answer).reduce(
      (sum, left, task) => sum + this.#weights[task]! * Math.max(0, left - this.#out[task]!),
      0,
    );
  }
}

/** Units of each task that an answer leaves out. */
function leftBy({ tasks }: Problem, { visits }: Placed): number[] {
  const left = tasks.map((task) => task.units);
  for (const { task, units } of visits) left[task]! -= units;
  return left;
}
