import {
  boundsOf,
  unitsLeft,
  type Activity,
  type Placement,
  type Plan,
} from '../../model/index.js';

/** An activity that opens the line in a window in which it is not made good. */
export interface LeftOpen {
  readonly activity: string;
  /** Itself and all that is bound to its window. */
  readonly block: readonly string[];
  /** What of that is missing there. */
  readonly missing: readonly string[];
  /** What would make it good and lies somewhere before it is finished; or where it would not be made good. */
  readonly made:
    | { readonly early: readonly string[] }
    | {
        readonly window: string | null;
        /** It was done before the plan begins. */
        readonly before: boolean;
      };
}

/** Every activity of a plan that some placements leave open, or whose makers-good stand without it. */
export function leftOpenIn(
  plan: Pick<Plan, 'activities'>,
  placements: readonly Placement[],
): LeftOpen[] {
  const bounds = boundsOf(plan.activities);
  if (bounds.length === 0) return [];
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const own = new Map<string, Placement[]>();
  for (const placement of placements) {
    const known = own.get(placement.activity);
    if (known) known.push(placement);
    else own.set(placement.activity, [placement]);
  }
  return bounds.flatMap(({ activity, members, unlinked }): LeftOpen[] => {
    const opener = rows.get(activity)!;
    const asked = members.filter((id) => unitsLeft(rows.get(id)!.work) > 0);
    if (unitsLeft(opener.work) === 0) return openedBefore(activity, asked, rows, own);
    const block = [activity, ...asked];
    const visits = own.get(activity) ?? [];
    if (unitsIn(visits) < unitsLeft(opener.work)) {
      const early = asked.filter((id) => own.has(id));
      return early.length === 0
        ? []
        : [
            {
              activity,
              block,
              missing: [activity],
              made: { early },
            },
          ];
    }
    const last = visits.reduce((latest, placement) =>
      placement.to > latest.to ? placement : latest,
    );
    const missing = asked.filter((id) => {
      const there = own.get(id) ?? [];
      return (
        unitsIn(there) < unitsLeft(rows.get(id)!.work) ||
        there.some((placement) => placement.window !== last.window) ||
        (unlinked.includes(id) && there.some((placement) => placement.from < last.to))
      );
    });
    if (missing.length === 0) return [];
    return [{ activity, block, missing, made: { window: last.window, before: false } }];
  });
}

/** Of an activity that was done before: what makes it good is all in one window, or not begun. */
function openedBefore(
  activity: string,
  asked: readonly string[],
  rows: ReadonlyMap<string, Activity>,
  own: ReadonlyMap<string, readonly Placement[]>,
): LeftOpen[] {
  const first = asked.flatMap((id) => own.get(id) ?? [])[0];
  if (!first) return [];
  const missing = asked.filter((id) => {
    const there = own.get(id) ?? [];
    return (
      unitsIn(there) < unitsLeft(rows.get(id)!.work) ||
      there.some((placement) => placement.window !== first.window)
    );
  });
  if (missing.length === 0) return [];
  return [{ activity, block: asked, missing, made: { window: first.window, before: true } }];
}

const unitsIn = (visits: readonly Placement[]): number =>
  visits.reduce((sum, placement) => sum + (placement.units ?? 1), 0);

/** The activities of a block that open the line, and all of it: it makes good what was done before where none does. */
export function blockOf(own: readonly Activity[]): {
  readonly openers: readonly string[];
  readonly makers: readonly string[];
} {
  const openers = own.filter((activity) => Array.isArray(activity.madeGoodBy));
  return { openers: openers.map(({ id }) => id), makers: own.map(({ id }) => id) };
}

/** The placements without those of blocks that are not whole in them. */
export function wholeBlocksIn(
  plan: { readonly activities: readonly Activity[] },
  placements: readonly Placement[],
): readonly Placement[] {
  let kept = placements;
  for (;;) {
    const gone = new Set(leftOpenIn(plan, kept).flatMap((leftOpen) => leftOpen.block));
    const fewer = kept.filter((placement) => !gone.has(placement.activity));
    if (fewer.length === kept.length) return kept;
    kept = fewer;
  }
}

/** Activities bound to the window of any of some, themselves included. */
export function boundWith(
  plan: { readonly activities: readonly Activity[] },
  some: Iterable<string>,
): ReadonlySet<string> {
  const bounds = boundsOf(plan.activities).map((bound) => [bound.activity, ...bound.members]);
  const all = new Set(some);
  for (let before = -1; before < all.size;) {
    before = all.size;
    for (const block of bounds)
      if (block.some((id) => all.has(id))) for (const id of block) all.add(id);
  }
  return all;
}
