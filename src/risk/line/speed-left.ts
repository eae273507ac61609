// Limits on speed that work leaves on the line, and the later work by whose end nothing of a limit is left.
import type { Instant } from '../../calendar/index.js';
import { unitsLeft, type Activity, type Extent } from '../../model/index.js';
import type { Placement } from '../../planner/fit/types.js';

/** A limit that is on the line from some work on. */
export interface SpeedLimitSet {
  readonly activity: Activity;
  /** The later work that covers the last of its place, and when that ends; null where some of it stays limited. */
  readonly lifted: {
    readonly activity: string;
    readonly window: string | null;
    readonly at: Instant;
  } | null;
}

/** All of one activity as it is placed. */
interface Piece {
  readonly row: Activity;
  readonly from: Instant;
  readonly to: Instant;
  readonly window: string | null;
  /** Every unit of it is placed. */
  readonly whole: boolean;
}

/**
 * The limits set by what is over at a moment. Later work lifts a limit where it goes on: on its own lines and extent, and
 * from its last minute on. Where it sets a limit of its own, that one is there then. Blank lines are every line, a blank
 * extent is everywhere.
 */
export function speedLimitsAt(
  activities: readonly Activity[],
  placements: readonly Placement[],
  moment: Instant,
): readonly SpeedLimitSet[] {
  const setting = activities.filter(
    (activity) => activity.speedAfter && activity.place === 'inside',
  );
  if (setting.length === 0) return [];
  const visits = new Map<string, Placement[]>();
  for (const placement of placements) {
    const own = visits.get(placement.activity);
    if (own) own.push(placement);
    else visits.set(placement.activity, [placement]);
  }
  const pieces = activities
    .flatMap((row) => pieceOf(row, visits.get(row.id) ?? []))
    .sort((a, b) => a.to - b.to);
  return setting.flatMap((activity): SpeedLimitSet[] => {
    const over = (visits.get(activity.id) ?? []).filter((placement) => placement.to <= moment);
    if (over.length === 0) return [];
    const since = Math.max(...over.map((placement) => placement.to));
    let left = placeOf(activity);
    for (const piece of pieces) {
      if (!piece.whole || piece.from < since || piece.row.id === activity.id) continue;
      left = without(left, piece.row);
      if (left.length === 0) {
        const lifted = { activity: piece.row.id, window: piece.window, at: piece.to };
        return [{ activity, lifted }];
      }
    }
    return [{ activity, lifted: null }];
  });
}

function pieceOf(row: Activity, visits: readonly Placement[]): Piece[] {
  if (visits.length === 0 || row.place !== 'inside') return [];
  const last = visits.reduce((a, b) => (b.to > a.to ? b : a));
  const { work } = row;
  const units = visits.reduce((sum, placement) => sum + (placement.units ?? unitsLeft(work)), 0);
  return [
    {
      row,
      from: Math.min(...visits.map((visit) => visit.from)),
      to: last.to,
      window: last.window,
      whole: units >= unitsLeft(work),
    },
  ];
}

/** A stretch of one line; an empty name: of every line. */
interface Stretch extends Extent {
  readonly line: string;
}

const everywhere: Extent = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };

function placeOf({ lines, extent = everywhere }: Activity): Stretch[] {
  return (lines.length === 0 ? [''] : lines).map((line) => ({ ...extent, line }));
}

/** What is left of stretches beside where some work goes on. A single point is a place too. */
function without(
  stretches: readonly Stretch[],
  { lines, extent = everywhere }: Activity,
): Stretch[] {
  return stretches.flatMap((stretch) => {
    if (lines.length > 0 && !lines.includes(stretch.line)) return [stretch];
    if (extent.from > stretch.to || extent.to < stretch.from) return [stretch];
    return [
      ...(extent.from > stretch.from ? [{ ...stretch, to: extent.from }] : []),
      ...(extent.to < stretch.to ? [{ ...stretch, from: extent.to }] : []),
    ];
  });
}
