import type { Instant } from '../../src/calendar/index.js';

/** A piece of work planned in a window. */
export interface RibbonPiece {
  readonly from: Instant;
  readonly to: Instant;
  /** Short; shown in the box if there is room. */
  readonly label: string;
  /** Even shorter, for a narrow box. */
  readonly short: string;
  readonly title: string;
}

/** Work planned in a window, and the state of its handback. */
export interface WindowWork {
  readonly window: string;
  readonly pieces: readonly RibbonPiece[];
  /** A short line at the right edge: `35 min, 91.7 %`. Empty: not known. */
  readonly outcome: string;
  /** The outcome is bad: it is emphasized, and its text says so. */
  readonly harm?: boolean;
}

interface Laned extends RibbonPiece {
  readonly lane: number;
}

/** Most lanes drawn separately; further ones share the last. */
const MOST = 6;
const lanes = new WeakMap<WindowWork, readonly Laned[]>();

/** Assigns the pieces of a window to as few lanes as their overlaps allow. */
export function lanedPieces(work: WindowWork): readonly Laned[] {
  let found = lanes.get(work);
  if (!found) lanes.set(work, (found = laid(work.pieces)));
  return found;
}

function laid(pieces: readonly RibbonPiece[]): Laned[] {
  const ends: number[] = [];
  return [...pieces]
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map((piece) => {
      let lane = ends.findIndex((end) => end <= piece.from);
      if (lane < 0) lane = Math.min(ends.length, MOST - 1);
      ends[lane] = Math.max(ends[lane] ?? 0, piece.to);
      return { ...piece, lane };
    });
}

export const laneCount = (work: WindowWork | undefined): number =>
  work ? Math.max(1, ...lanedPieces(work).map((piece) => piece.lane + 1)) : 1;
