import { Board, headsOf, scoreOf, type Problem, type Score, type Visit } from '../fit/index.js';
import { windowsIn, withWindows, type Candidate, type Goal } from '../search/objectives.js';
import { cappedOf, partOf, type Caps } from '../search/parts.js';
import { prove } from './prove.js';
import { windowBound } from './window-bound.js';

export interface Sharp {
  /** Values that no answer beats which is as good as the candidate in the values before. */
  readonly bound: Score;
  /** The candidate, or what was found on the way that is better. */
  readonly best: Candidate;
  /** Choices of windows, fewer than the candidate uses, of which nothing shows that they do not do. */
  readonly open: readonly (readonly number[])[];
}

/**
 * Raises the bound of each value in turn: can it be a little less than it is, when the values before it are no worse?
 *
 * Nothing is raised where more is left out than must be, or where placements are settled.
 *
 * @param share Part of the steps that are left for it, in equal parts for the values.
 */
export function tightenBounds(
  problem: Problem,
  goal: Goal,
  from: Candidate,
  known: Score,
  share: number,
): Sharp {
  const { effort } = problem;
  const end = effort.spent + share * (effort.limit - effort.spent);
  const ended = effort.untilSpent(end);
  let best = from;
  const bound = [...known];
  let open: Sharp['open'] = [];
  const sharp = (): Sharp => ({ bound, best, open });
  if (problem.pinned || best.score[0] !== bound[0] || best.score[1] !== bound[1]) return sharp();
  const whole = bound[0] === 0;
  const core = whole ? problem : placeable(problem);
  const better = (visits: readonly Visit[] | undefined, at: number): void => {
    if (!visits || !whole) return;
    const candidate = candidateOf(problem, goal, visits);
    const before = candidate.score.findIndex((value, i) => value !== best.score[i]);
    // Of an answer that is no better in the values before, this value is all that counts.
    if (before >= 0 && before <= at && candidate.score[before]! < best.score[before]!)
      best = candidate;
  };

  let caps: Caps = { late: Number.POSITIVE_INFINITY, finish: Number.POSITIVE_INFINITY };
  const named = goal.objectives.filter((each) => each !== 'margins');
  for (const [i, name] of named.entries()) {
    const at = 2 + i;
    if (ended()) return sharp();
    // A value that cannot be settled leaves those after it their part.
    const stop = effort.untilSpent(effort.spent + (end - effort.spent) / (named.length - i));
    if (name === 'fewest-windows') {
      if (bound[at]! >= best.score[at]!) return sharp();
      const found = windowBound(core, { caps, enough: best.score[at]!, stop });
      bound[at] = Math.max(bound[at]!, found.atLeast);
      better(found.visits, at);
      open = found.open;
      // A cap on the count would say little of the values after it.
      return sharp();
    }
    const key = name === 'finish' ? 'finish' : 'late';
    // First whether it can be less at all; then by halves how much less is shown not to be.
    for (let next = best.score[at]! - 1; next >= bound[at]! && !stop();) {
      const proof = prove(cappedOf(core, { ...caps, [key]: next }), stop);
      if (proof.none) bound[at] = next + 1;
      else {
        better(proof.visits, at);
        if (!proof.visits || best.score[at]! > next) break;
      }
      next = best.score[at]! - 1;
    }
    if (bound[at]! < best.score[at]!) halve(core, caps, key, bound, at, best.score[at]! - 1, stop);
    caps = { ...caps, [key]: best.score[at]! };
  }
  return sharp();
}

/** Raises one bound as far as a proof is found for, looking by halves below a value for which there is none. */
function halve(
  problem: Problem,
  caps: Caps,
  key: keyof Caps,
  bound: number[],
  at: number,
  open: number,
  stop: () => boolean,
): void {
  let high = open;
  while (bound[at]! < high && !stop()) {
    const middle = Math.floor((bound[at]! + high) / 2);
    if (prove(cappedOf(problem, { ...caps, [key]: middle }), stop).none) bound[at] = middle + 1;
    else high = middle;
  }
}

/** What can be placed at all. Where nothing else is left out, all of it is placed. */
function placeable(problem: Problem): Problem {
  const { starts, ends } = headsOf(new Board(problem));
  const indices = problem.tasks.flatMap(({ index }) =>
    Number.isFinite(ends[index]) ? [index] : [],
  );
  return partOf(problem, indices, starts);
}

function candidateOf(problem: Problem, goal: Goal, visits: readonly Visit[]): Candidate {
  const board = new Board(problem);
  for (const visit of visits) board.put(visit);
  return { visits, score: withWindows(scoreOf(board, goal.order), windowsIn(visits), goal) };
}
