import { MINUTE, type Instant } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { AccessWindow, Activity, Phrase } from '../../model/index.js';
import type { KeyDateForecast, Unplaced } from '../../planner/search/types.js';

/** How hard the scheduler may try, and how it is stopped. */
export interface SearchTime {
  /** Times the usual work of a search. */
  readonly effort: number;
  readonly seed: number;
  readonly clock: () => number;
  readonly shouldStop: () => boolean;
  /** Pieces of the plan in force that stay where they are, but in the window asked about. */
  readonly frozen: readonly Placement[];
}

/** Placements with what could not be placed and the key dates. */
export interface Planned {
  readonly placements: readonly Placement[];
  readonly unplaced: readonly Unplaced[];
  readonly keyDates: readonly KeyDateForecast[];
  /** Why what was found is no plan; absent where it is one. */
  readonly unsound?: Phrase;
}

/** Units of each activity that are placed in a window; 1 for a whole piece of work. */
export function unitsIn(
  window: string,
  placements: readonly Placement[],
): ReadonlyMap<string, number> {
  const units = new Map<string, number>();
  for (const placement of placements)
    if (placement.window === window)
      units.set(placement.activity, (units.get(placement.activity) ?? 0) + (placement.units ?? 1));
  return units;
}

/**
 * The placements with the last units of one activity taken out of a window; what is left of its visits keeps its
 * place. A visit of which nothing is left is gone.
 *
 * @throws {RangeError} When the activity is no repeated work.
 */
export function withoutUnits(
  placements: readonly Placement[],
  window: string,
  activity: Activity,
  units: number,
): readonly Placement[] {
  const { work } = activity;
  if (work.kind !== 'units') throw new RangeError(`${activity.id} is no repeated work`);
  let left = units;
  const visits = placements
    .filter((placement) => placement.window === window && placement.activity === activity.id)
    .sort((a, b) => b.from - a.from);
  const shorter = new Map<Placement, Placement | null>();
  for (const visit of visits) {
    const out = Math.min(left, visit.units ?? 0);
    left -= out;
    const keep = (visit.units ?? 0) - out;
    const minutes = work.setUpMinutes + keep * work.minutesPerUnit + work.makeSafeMinutes;
    if (out > 0)
      shorter.set(
        visit,
        keep === 0 ? null : { ...visit, units: keep, to: visit.from + minutes * MINUTE },
      );
  }
  return placements.flatMap((placement) => {
    const now = shorter.get(placement);
    return now === undefined ? [placement] : now === null ? [] : [now];
  });
}

/** When the last of the work in a window ends; the window's start when there is none. */
export function clearAt(window: AccessWindow, placements: readonly Placement[]): Instant {
  return placements.reduce(
    (last, placement) => (placement.window === window.id ? Math.max(last, placement.to) : last),
    window.start,
  );
}
