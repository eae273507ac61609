import type { Board } from '../problem/board.js';
import { headsOf } from '../problem/heads.js';
import { latestOf } from '../problem/latest.js';
import { isOverloaded } from '../problem/pools.js';

/**
 * Whether it shows without a search that not everything can be placed in time: something finishes too late even by
 * itself, or more is asked of a resource than there is of it.
 *
 * @param heads Of the board, where they are known.
 */
export function isProvablyInfeasible(empty: Board, heads = headsOf(empty)): boolean {
  const latest = latestOf(empty.problem);
  return (
    heads.ends.some((end, index) => end > latest.ends[index]!) ||
    isOverloaded(empty.problem, heads.starts, latest)
  );
}
