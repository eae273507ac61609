import { Board, listBy, placeAll, type Problem } from '../fit/index.js';

/** What a search turns over: in which order tasks are placed, how far at first, and in which windows. */
export interface Recipe {
  /** Small is early. */
  readonly weights: readonly number[];
  /** Units of a repeated task placed at its turn; the rest when all others have had theirs. 0: no cap. */
  readonly caps: readonly number[];
  /** 1 where a window may be used. */
  readonly allowed: Uint8Array;
}

/**
 * The board that a recipe comes to.
 *
 * @param mostLate Minutes late, all together, past which the board is of no use: it is then given up half made.
 */
export function decode(problem: Problem, recipe: Recipe): Board;
export function decode(problem: Problem, recipe: Recipe, mostLate: number): Board | undefined;
export function decode(
  problem: Problem,
  recipe: Recipe,
  mostLate = Number.POSITIVE_INFINITY,
): Board | undefined {
  const board = new Board(problem, recipe.allowed);
  const list = listBy(problem, recipe.weights);
  const capped = recipe.caps.some((cap) => cap > 0);
  let given = false;
  const watch = mostLate < Number.POSITIVE_INFINITY ? lateWatch(board, mostLate) : undefined;
  placeAll(board, list, {
    caps: recipe.caps,
    hopeless: watch && ((index) => (given = watch(index))),
  });
  if (given) return undefined;
  // Precedence puts followers of capped work after it in the list too, so one more pass places all that can be.
  if (capped) placeAll(board, list);
  return board;
}

/** Tells, task by task as they are placed, whether more minutes are late than may be. */
function lateWatch({ problem, ends }: Board, most: number): (index: number) => boolean {
  const { dues } = problem;
  const late = new Float64Array(dues.length);
  const duesOf: number[][] = problem.tasks.map(() => []);
  dues.forEach(({ tasks }, at) => {
    for (const index of tasks) duesOf[index]!.push(at);
  });
  let sum = 0;
  return (index) => {
    for (const at of duesOf[index]!) {
      const now = Math.max(late[at]!, ends[index]! - dues[at]!.due);
      sum += now - late[at]!;
      late[at] = now;
    }
    return sum > most;
  };
}
