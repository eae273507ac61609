import { MINUTE } from '../../calendar/index.js';
import type { Plan } from '../../model/index.js';
import { Board, LedgerCache, problemOf, type Problem, type Task } from '../fit/index.js';
import { canonicalOf } from '../problem/canonical.js';

/** A window whose end would have to move so many minutes later. */
export interface NearMiss {
  readonly window: number;
  readonly by: number;
}

/** Windows that are tried for one piece of work, and plans made for all of them together. */
const WINDOWS = 3;
const TRIES = 60;
/** As far as an end is moved, in minutes. */
const FARTHEST = 14 * 1440;

/**
 * Looks for the window whose end has to move the least for the rest of a task to find its place beside all that is
 * placed. It is tried: the window is made longer, its usable time worked out anew, and the work put down in it.
 */
export class NearMisses {
  readonly #plan: Plan;
  readonly #problem: Problem;
  readonly #board: Board;
  readonly #book: LedgerCache;
  #tries = TRIES;

  constructor(plan: Plan, problem: Problem, board: Board) {
    this.#plan = plan;
    this.#problem = problem;
    this.#board = board;
    this.#book = new LedgerCache(plan);
  }

  /** @param guesses Windows with the fewest minutes that might do, the likeliest first. */
  of(task: Task, guesses: readonly NearMiss[]): NearMiss | undefined {
    // What is bound to other work needs room for all of it.
    if (task.block !== undefined || this.#problem.effort.isCut()) return undefined;
    let best: NearMiss | undefined;
    for (const { window, by } of guesses.slice(0, WINDOWS)) {
      if (best && by >= best.by) break;
      const found = this.#fewest(task, window, by, best?.by ?? FARTHEST);
      if (found !== undefined) best = { window, by: found };
    }
    return best;
  }

  /** The fewest minutes from `low` on, and up to `most`, that do; undefined where none do. */
  #fewest(task: Task, window: number, low: number, most: number): number | undefined {
    let fails = low - 1;
    let does = low;
    while (!this.#fits(task, window, does)) {
      if (does >= most || this.#tries <= 0 || this.#problem.effort.isCut()) return undefined;
      fails = does;
      does = Math.min(most, does + Math.max(30, does - low + 1));
    }
    while (does - fails > 1 && this.#tries > 0) {
      const middle = Math.floor((does + fails) / 2);
      if (this.#fits(task, window, middle)) does = middle;
      else fails = middle;
    }
    return does;
  }

  #fits({ index, activity }: Task, window: number, by: number): boolean {
    this.#tries -= 1;
    const { id } = this.#problem.windows[window]!;
    const longer = canonicalOf({
      ...this.#plan,
      windows: this.#plan.windows.map((item) =>
        item.id === id ? { ...item, end: item.end + by * MINUTE } : item,
      ),
    });
    const windows = longer.windows.filter((item) => item.status !== 'withdrawn');
    const problem = problemOf(longer, { windows, activities: longer.activities }, this.#book);
    const task = problem.tasks[index];
    if (task?.activity.id !== activity.id || problem.base !== this.#problem.base) return false;
    const board = new Board(problem);
    for (const visit of this.#board.visits) board.put(visit);
    if (!board.ready(task)) return false;
    board.place(task);
    return board.left[index] === 0;
  }
}
