import type { Placement } from '../../src/planner/fit/types.js';

export interface Lane {
  readonly index: number;
  readonly placement: Placement;
  /** 0 for the first line; work that overlaps in time stands on different lines. */
  readonly lane: number;
}

/** Placements of one window on as few lines as their overlaps allow, in time order. */
export function lanesOf(
  placements: readonly Lane['placement'][],
  indices: readonly number[],
): Lane[] {
  const ends: number[] = [];
  return placements
    .map((placement, at) => ({ placement, index: indices[at] ?? at }))
    .sort((a, b) => a.placement.from - b.placement.from || a.placement.to - b.placement.to)
    .map(({ placement, index }) => {
      let lane = ends.findIndex((end) => end <= placement.from);
      if (lane < 0) lane = ends.length;
      ends[lane] = placement.to;
      return { placement, index, lane };
    });
}
