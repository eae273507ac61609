import { createBudget, type Budget, type Limits } from './budget.js';
import { lineBound } from './balance/bounds.js';
import { fillBins, type Taste } from './balance/fill.js';
import { createLine, type Line } from './balance/line.js';
import { createSearch } from './balance/search.js';

export interface BalanceProblem extends Limits {
  /** Whole, from 0 to `capacity`, one per task. */
  readonly times: Int32Array;
  /** What a bin holds; every bin is alike. */
  readonly capacity: number;
  /** Pairs `[a, b]`: b lies in the same bin as a or a later one. */
  readonly precedence: readonly (readonly [number, number])[];
  /** Called with each better answer. */
  readonly onProgress?: (answer: { readonly count: number; readonly lowerBound: number }) => void;
  /** How many bytes the search may hold, roughly; it then goes on without proving. Default 256 MB. */
  readonly memoryBytes?: number;
}

export interface BalanceAnswer {
  /** The bin of each task, 0-based. */
  readonly bins: Int32Array;
  /** Bins used. */
  readonly count: number;
  /** No answer uses fewer. Equal to `count` when `proven`. */
  readonly lowerBound: number;
  readonly proven: boolean;
  /** States the exact search opened. */
  readonly nodes: number;
}

/**
 * The fewest equal bins that hold all tasks, a successor in its predecessor's bin or a later one.
 *
 * Always answers, with the best found by the deadline; the same problem gives the same answer unless the deadline cut it
 * short. The problem is known as simple assembly line balancing, type 1.
 *
 * @throws {RangeError} When a time is outside 0 .. `capacity`, or the precedence closes a loop.
 * @see Sewell and Jacobson, "A branch, bound, and remember algorithm for the simple assembly line balancing problem",
 *   INFORMS J. Comput. 24(3), 2012: the search's method, from memory; the code is our own.
 */
export function balance(problem: BalanceProblem): BalanceAnswer {
  const forward = createLine(problem.times, problem.capacity, problem.precedence);
  const backward = createLine(
    problem.times,
    problem.capacity,
    problem.precedence.map(([a, b]) => [b, a] as const),
  );
  const best = new Incumbent(problem, forward, lineBound(forward, backward));
  const budget = createBudget(problem);
  fillBothWays(best, forward, backward, budget);
  let nodes = 0;
  if (!best.proven && !budget.expired()) nodes = searchBothWays(best, forward, backward, problem);
  return { bins: best.bins, count: best.count, lowerBound: best.bound, proven: best.proven, nodes };
}

/** The best answer so far. Bins of the reversed problem are turned round on the way in. */
class Incumbent {
  bins: Int32Array = new Int32Array(0);
  count = Infinity;
  bound: number;
  private readonly problem: BalanceProblem;
  private readonly forward: Line;

  constructor(problem: BalanceProblem, forward: Line, bound: number) {
    this.problem = problem;
    this.forward = forward;
    this.bound = bound;
  }

  get proven(): boolean {
    return this.count <= this.bound;
  }

  offer(line: Line, bins: Int32Array | undefined): void {
    if (bins === undefined) return;
    let count = 0;
    for (const bin of bins) count = Math.max(count, bin + 1);
    if (count >= this.count) return;
    this.count = count;
    this.bins = line === this.forward ? bins : bins.map((bin) => count - 1 - bin);
    this.problem.onProgress?.({ count, lowerBound: this.bound });
  }
}

/** Weights and follower counts tried beside a task's own time, the plainest first. */
const tastes: readonly Taste[] = [0, 0.005, 0.02, 0.1].flatMap((weight) =>
  [0, 0.01, 0.5].map((followers) => ({ weight, followers })),
);

/** Answers at once with single loads, then looks at more loads a bin until the bound is met or all tastes are tried. */
function fillBothWays(best: Incumbent, forward: Line, backward: Line, budget: Budget): void {
  for (const line of [forward, backward])
    best.offer(line, fillBins(line, { weight: 1, followers: 0 }, 1, Infinity));
  for (const limit of [50, 1000]) {
    for (const taste of tastes) {
      for (const line of [forward, backward]) {
        if (best.proven || budget.expired()) return;
        // Shares of time, so that the taste means the same whatever the unit.
        const scaled = {
          weight: taste.weight,
          followers: (taste.followers * line.total) / Math.max(1, line.n),
        };
        best.offer(line, fillBins(line, scaled, limit, best.count, budget));
      }
    }
  }
}

/** Takes turns between the problem and its reverse, each turn twice as long: whichever branches less proves first. */
function searchBothWays(
  best: Incumbent,
  forward: Line,
  backward: Line,
  problem: BalanceProblem,
): number {
  const memoryBytes = (problem.memoryBytes ?? 256 * 2 ** 20) / 2;
  const sides = [forward, backward].map((line) => ({
    line,
    search: createSearch(line, memoryBytes),
  }));
  const whole = createBudget(problem);
  let open = sides;
  let turn = 1000;
  while (open.length > 0 && !best.proven && !whole.expired()) {
    for (const side of open) {
      const outcome = side.search.run(best.count, turn, whole);
      best.offer(side.line, outcome.bins);
      if (outcome.state === 'exhausted') best.bound = best.count;
      if (best.proven || whole.expired()) break;
    }
    open = open.filter(({ search }) => search.open);
    turn *= 2;
  }
  return sides.reduce((sum, { search }) => sum + search.nodes, 0);
}
