import { compareScores, type Problem } from '../fit/index.js';
import { attemptOf, improve, type Attempt, type ImproveOptions } from './improve.js';
import { usableWindows, type Candidate } from './objectives.js';
import { withinWindows } from './parts.js';

/** Minutes of work in each window that an answer uses, the least used first. */
function useOf({ visits }: Candidate): [window: number, minutes: number][] {
  const use = new Map<number, number>();
  for (const { window, start, end } of visits)
    if (window >= 0) use.set(window, (use.get(window) ?? 0) + end - start);
  return [...use].sort((a, b) => a[1] - b[1] || a[0] - b[0]);
}

/** Leaves out one window after another, the least used first, as long as that makes the answer no worse. */
export function dropWindows(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  let best = from;
  const used = useOf(from);
  const others = new Set(usableWindows(problem));
  for (const [window] of used) others.delete(window);
  for (const window of [...others, ...used.map(([each]) => each)]) {
    if (options.stop()) break;
    const allowed = best.recipe.allowed.slice();
    allowed[window] = 0;
    const next = attemptOf(problem, { ...best.recipe, allowed }, options.goal);
    if (compareScores(next.score, best.score) <= 0) best = next;
  }
  return best;
}

/** Choices of windows tried side by side. */
const CHOICES = 64;

/**
 * Looks whether all that is reached can be had with one window less: without one of those in use, or without two of them and
 * with another in their place. The choices that lose the least time are tried side by side, and ever fewer of them, those that
 * come nearest, ever longer. `stop` ends it.
 *
 * @param turns Changes tried in each choice of windows at first.
 */
export function reduceWindows(
  problem: Problem,
  from: Attempt,
  turns: number,
  options: ImproveOptions,
): Attempt {
  const at = 2 + options.goal.ahead;
  const isDone = ({ score }: Candidate): boolean => score[at]! <= options.bound[at]!;
  let best = from;
  while (!options.stop() && !isDone(best)) {
    const next = withOneLess(problem, best, turns, options);
    if (!next) break;
    best = next;
  }
  return best;
}

/** The same with one window less, or nothing where none was found. */
function withOneLess(
  problem: Problem,
  known: Attempt,
  turns: number,
  options: ImproveOptions,
): Attempt | undefined {
  let tries: Held[] = [];
  for (const windows of choicesOf(problem, known)) {
    if (options.stop()) return undefined;
    tries.push(new Held(problem, known, windows, options));
    if (tries.length === CHOICES) break;
  }
  for (let each = turns; tries.length > 0; each *= 2) {
    for (const held of tries) {
      if (options.stop()) return undefined;
      if (held.climb(each)) return held.best;
    }
    tries.sort((a, b) => compareScores(a.best.score, b.best.score));
    tries = tries.slice(0, tries.length >> 1);
  }
  return undefined;
}

/** Sets of windows, one fewer than an answer uses, those that lose the least time first. */
function* choicesOf(problem: Problem, known: Candidate): Generator<readonly number[]> {
  const use = useOf(known);
  const used = use.map(([window]) => window);
  for (const window of used) yield used.filter((other) => other !== window);
  const room = roomOf(problem);
  const others = usableWindows(problem)
    .filter((window) => !used.includes(window))
    .sort((a, b) => room.get(b)! - room.get(a)! || a - b);
  const swaps = use.flatMap(([a, one], i) =>
    use
      .slice(i + 1)
      .flatMap(([b, two]) => others.map((c) => ({ a, b, c, lost: one + two - room.get(c)! }))),
  );
  for (const { a, b, c } of swaps.sort((x, y) => x.lost - y.lost))
    yield [...used.filter((window) => window !== a && window !== b), c];
}

/** The most minutes that some task may use in each window. */
function roomOf(problem: Problem): ReadonlyMap<number, number> {
  const room = new Map<number, number>();
  for (const slots of new Set(problem.tasks.map((task) => task.slots))) {
    const own = new Map<number, number>();
    for (const { window, start, end } of slots)
      if (window >= 0) own.set(window, (own.get(window) ?? 0) + end - start);
    for (const [window, minutes] of own) room.set(window, Math.max(room.get(window) ?? 0, minutes));
  }
  return room;
}

/** What is found in some of the windows alone in a short search, if it is better than what is known. */
export function heldTo(
  problem: Problem,
  known: Attempt,
  windows: readonly number[],
  turns: number,
  options: ImproveOptions,
): Attempt {
  const held = new Held(problem, known, windows, options);
  return held.climb(turns) ? held.best : known;
}

/** A search in some of the windows alone that can go on later. */
class Held {
  readonly #problem: Problem;
  readonly #known: Attempt;
  readonly #options: ImproveOptions;
  #climbs = 0;
  best: Attempt;

  constructor(
    problem: Problem,
    known: Attempt,
    windows: readonly number[],
    options: ImproveOptions,
  ) {
    const allowed = new Uint8Array(problem.windows.length);
    for (const window of windows) allowed[window] = 1;
    this.#problem = withinWindows(problem, allowed);
    this.#known = known;
    this.#options = options;
    this.best = attemptOf(this.#problem, { ...known.recipe, allowed }, options.goal);
  }

  /** Whether so many changes more bring something better than what is known: as good with fewer windows will do. */
  climb(turns: number): boolean {
    const { onBetter, stop, seed, ...rest } = this.#options;
    const enough = this.#known.score;
    let turn = 0;
    this.best = improve(this.#problem, this.best, {
      ...rest,
      seed: seed + this.#climbs,
      enough,
      stop: () => (turn += 1) > turns || stop(),
    });
    this.#climbs += 1;
    const isBetter = compareScores(this.best.score, enough) < 0;
    if (isBetter) onBetter?.(this.best);
    return isBetter;
  }
}
