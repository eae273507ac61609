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

/**
 * Looks whether all that is reached can be had with one window less: without one of those in use, the least used first;
 * then without two of them and with another in their place. Each is a short search. `stop` ends it.
 *
 * @param turns Changes tried in each choice of windows.
 */
export function reduceWindows(
  problem: Problem,
  from: Attempt,
  turns: number,
  options: ImproveOptions,
): Attempt {
  const at = 2 + options.goal.ahead;
  let best = from;
  for (;;) {
    const known = best;
    for (const windows of choicesOf(problem, known)) {
      if (options.stop() || best.score[at]! <= options.bound[at]!) return best;
      best = heldTo(problem, known, windows, turns, options);
      if (best !== known) break;
    }
    if (best === known) return best;
  }
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
  const allowed = new Uint8Array(problem.windows.length);
  for (const window of windows) allowed[window] = 1;
  const some = withinWindows(problem, allowed);
  const start = attemptOf(some, { ...known.recipe, allowed }, options.goal);
  const { onBetter, ...quiet } = options;
  let turn = 0;
  const next = improve(some, start, {
    ...quiet,
    // Anything as good with fewer windows will do.
    enough: known.score,
    stop: () => (turn += 1) > turns || options.stop(),
  });
  if (compareScores(next.score, known.score) >= 0) return known;
  onBetter?.(next);
  return next;
}
