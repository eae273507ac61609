import { samePlace, type Activity, type Placement } from '../../model/index.js';

/**
 * Two placed pieces that stand on a line and a stretch of it in common at one time. `alone`: one of them must have the
 * place to itself. `unsaid`: nobody said of both that they may share it. `shared`: both may.
 */
export interface Meeting {
  /** Indices of the placements, the one that begins first before the other. */
  readonly first: number;
  /** Index of the other placement. */
  readonly second: number;
  readonly kind: 'alone' | 'unsaid' | 'shared';
  /** Epoch milliseconds, half-open. */
  readonly from: number;
  /** Epoch milliseconds at which the meeting is over. */
  readonly to: number;
  /** Metres that both reach; absent where one of them says no place, which means everywhere. */
  readonly extent?: { readonly from: number; readonly to: number };
}

/**
 * Every meeting of inside pieces, by when it begins. Visits of one activity do not meet each other. O(n log n) and the
 * pairs that overlap in time.
 */
export function meetingsOf(
  placements: readonly Placement[],
  activities: readonly Activity[],
): Meeting[] {
  const byId = new Map(activities.map((activity) => [activity.id, activity]));
  const pieces = placements
    .flatMap((placement, index) => {
      const activity = byId.get(placement.activity);
      return activity?.place === 'inside' && placement.to > placement.from
        ? [{ index, activity, placement }]
        : [];
    })
    .sort((a, b) => a.placement.from - b.placement.from || a.index - b.index);
  const found: Meeting[] = [];
  let open: typeof pieces = [];
  for (const piece of pieces) {
    open = open.filter((other) => other.placement.to > piece.placement.from);
    for (const other of open) {
      const [a, b] = [other.activity, piece.activity];
      if (a.id === b.id || !samePlace(a, b)) continue;
      const extent = inCommon(a, b);
      found.push({
        first: other.index,
        second: piece.index,
        kind:
          a.occupies === 'alone' || b.occupies === 'alone'
            ? 'alone'
            : a.occupies === 'shared' && b.occupies === 'shared'
              ? 'shared'
              : 'unsaid',
        from: piece.placement.from,
        to: Math.min(piece.placement.to, other.placement.to),
        ...(extent && { extent }),
      });
    }
    open.push(piece);
  }
  return found;
}

function inCommon(a: Activity, b: Activity): Meeting['extent'] {
  if (!a.extent || !b.extent) return undefined;
  return {
    from: Math.max(a.extent.from, b.extent.from),
    to: Math.min(a.extent.to, b.extent.to),
  };
}
