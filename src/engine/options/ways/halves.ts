import { MINUTE, type Instant } from '../../../calendar/index.js';
import type { Placement } from '../../../planner/fit/types.js';
import { unitsLeft, type Activity } from '../../../model/index.js';
import { activityOf, type Situation } from '../situation.js';

/** How the work of a window divides into two. */
export interface Halves {
  /** Units of each activity that go to the second window; 1 for a whole piece of work. */
  readonly later: ReadonlyMap<string, number>;
  /** Whether nothing of an activity stays in the first, nor is done elsewhere. */
  readonly wholly: (activity: string) => boolean;
  /** What of a visit stays in the first. */
  readonly first: (visit: Placement) => readonly Placement[];
}

/** The window's work divided where half of its minutes are done; repeated work between two units. */
export function halves(at: Situation): Halves {
  const visits = at.planned.placements
    .filter((placement) => placement.window === at.window.id)
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const all = visits.reduce((total, placement) => total + (placement.to - placement.from), 0);
  let passed = 0;
  let moment = Infinity;
  for (const visit of visits) {
    if (passed + (visit.to - visit.from) >= all / 2) {
      moment = visit.from + (all / 2 - passed);
      break;
    }
    passed += visit.to - visit.from;
  }
  const later = new Map<string, number>();
  const kept = new Map<Placement, readonly Placement[]>();
  for (const visit of visits) {
    const stays = firstPart(visit, activityOf(at, visit.activity), moment, visits[0] === visit);
    kept.set(visit, stays);
    const goes = (visit.units ?? 1) - (stays.length === 0 ? 0 : (stays[0]!.units ?? 1));
    if (goes > 0) later.set(visit.activity, (later.get(visit.activity) ?? 0) + goes);
  }
  return {
    later,
    wholly: (id) => unitsLeft(activityOf(at, id).work) === later.get(id),
    first: (visit) => kept.get(visit) ?? [],
  };
}

/** What of a visit is done before the moment: all or nothing of a whole piece, the units that fit of repeated work. */
function firstPart(
  visit: Placement,
  { work }: Activity,
  moment: Instant,
  isFirst: boolean,
): readonly Placement[] {
  if (work.kind === 'whole' || visit.units === undefined)
    return visit.from < moment || isFirst ? [visit] : [];
  const time = (moment - visit.from) / MINUTE - work.setUpMinutes;
  const units = Math.min(visit.units, Math.max(0, Math.floor(time / work.minutesPerUnit)));
  if (units === 0) return [];
  const minutes = work.setUpMinutes + units * work.minutesPerUnit + work.makeSafeMinutes;
  return [{ ...visit, units, to: visit.from + minutes * MINUTE }];
}
