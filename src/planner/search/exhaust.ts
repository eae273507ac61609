import {
  Board,
  compareScores,
  searchAll,
  type Problem,
  type Score,
  type Visit,
} from '../fit/index.js';
import { windowsKept } from './pins.js';
import { usableWindows, windowsIn, withWindows, type Candidate, type Goal } from './objectives.js';

export interface ExhaustOptions {
  readonly goal: Goal;
  /** Values that no schedule beats. */
  readonly bound: Score;
  readonly stop: () => boolean;
}

export interface Exhausted extends Candidate {
  /** How many leading values of the score are proven best. */
  readonly proven: number;
}

/**
 * Looks at every schedule of a small problem, starting from a known answer.
 *
 * The count of windows gets no smaller by starting sooner, so it is not searched for directly: for each set of
 * windows, the smallest sets first, the question is whether the values ahead of it can still be had.
 */
export function exhaust(problem: Problem, from: Candidate, options: ExhaustOptions): Exhausted {
  const { goal, bound, stop } = options;
  const ahead = 2 + goal.ahead;
  const without = (score: Score): Score => [...score.slice(0, ahead), ...score.slice(ahead + 1)];
  const suffix = 4 - ahead;

  // 1. The best that the values ahead of the count can be, in all windows.
  let best = from;
  if (compareScores(best.score.slice(0, ahead), bound.slice(0, ahead)) > 0) {
    const first = searchAll(new Board(problem), {
      order: goal.order,
      below: without(best.score),
      enough: [
        ...bound.slice(0, ahead),
        ...Array.from({ length: suffix }, () => Number.POSITIVE_INFINITY),
      ],
      stop,
    });
    if (first.visits) best = better(best, first.visits, first.score!, goal);
    if (!first.exhausted) return { ...best, proven: 0 };
  }

  // 2. The fewest windows with which that can be had, and the best of the rest in so many.
  const head = best.score.slice(0, ahead);
  const kept = windowsKept(problem);
  const windows = usableWindows(problem).filter((window) => !kept.has(window));
  const most = best.score[ahead]!;
  const last = suffix === 0 ? most - 1 : most;
  for (let count = Math.max(kept.size, bound[ahead]!); count <= last; count += 1) {
    for (const allowed of subsets(windows, count - kept.size, problem.windows.length)) {
      for (const window of kept) allowed[window] = 1;
      if (stop()) return { ...best, proven: ahead };
      const known = best.score[ahead] === count;
      const below =
        suffix === 0
          ? [...head.slice(0, -1), head.at(-1)! + 0.5]
          : known
            ? without(best.score)
            : [...head, ...Array.from({ length: suffix }, () => Number.POSITIVE_INFINITY)];
      const answer = searchAll(new Board(problem, allowed), {
        order: goal.order,
        below,
        ...(suffix === 0 ? { enough: head } : {}),
        stop,
      });
      if (answer.visits) best = better(best, answer.visits, answer.score!, goal);
      if (!answer.exhausted) return { ...best, proven: ahead };
      if (suffix === 0 && answer.visits) return { ...best, proven: 5 };
    }
    if (best.score[ahead] === count) break;
  }
  return { ...best, proven: 5 };
}

function better(known: Candidate, visits: readonly Visit[], score: Score, goal: Goal): Candidate {
  const full = withWindows(score, windowsIn(visits), goal);
  return compareScores(full, known.score) < 0 ? { visits, score: full } : known;
}

/** Every choice of `count` of the windows, as masks. */
function* subsets(windows: readonly number[], count: number, size: number): Generator<Uint8Array> {
  const mask = new Uint8Array(size);
  function* from(at: number, left: number): Generator<Uint8Array> {
    if (left === 0) yield mask;
    else
      for (let i = at; i + left <= windows.length; i += 1) {
        mask[windows[i]!] = 1;
        yield* from(i + 1, left - 1);
        mask[windows[i]!] = 0;
      }
  }
  yield* from(0, count);
}
