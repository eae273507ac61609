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

/** The board that a recipe comes to. */
export function decode(problem: Problem, recipe: Recipe): Board {
  const board = new Board(problem, recipe.allowed);
  const list = listBy(problem, recipe.weights);
  const capped = recipe.caps.some((cap) => cap > 0);
  placeAll(board, list, recipe.caps);
  // Precedence puts followers of capped work after it in the list too, so one more pass places all that can be.
  if (capped) placeAll(board, list);
  return board;
}
