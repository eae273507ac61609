import type { Placement, Plan } from '../../model/index.js';
import { windowMoves } from '../../planner/given/moves.js';
import type { ReportWord } from '../report/english/words.js';
import { minuteText } from './plan-name.js';

/** An activity that does not lie as it did in another plan: its visits in order of time. */
export interface PlanMove {
  readonly activity: string;
  /** `new`: it had no place; `out`: it has none now; `window`: other windows, or other units in them; `time`: other minutes. */
  readonly kind: 'new' | 'out' | 'window' | 'time';
  readonly was: readonly Placement[];
  readonly is: readonly Placement[];
}

/** The same in words, visit by visit: `N1 2027-03-27 22:20 to 2027-03-28 00:20`. */
export interface PlanChange extends Pick<PlanMove, 'activity' | 'kind'> {
  readonly was: string;
  readonly is: string;
}

export const changeWords: Readonly<Record<PlanMove['kind'], ReportWord>> = {
  new: 'new in the plan',
  out: 'no longer in the plan',
  window: 'in another window',
  time: 'same window, other time',
};

type Zoned = Pick<Plan, 'windows' | 'zone'>;

/** What lies otherwise in the second plan than in the first, in the order of the plan's activities. */
export function planMoves(
  plan: Zoned & Pick<Plan, 'activities'>,
  before: readonly Placement[],
  after: readonly Placement[],
): readonly PlanMove[] {
  const moved = new Set(windowMoves(before, after).map((move) => move.activity));
  const known = plan.activities.map((activity) => activity.id);
  const gone = before.map((placement) => placement.activity).filter((id) => !known.includes(id));
  return [...new Set([...known, ...gone])].flatMap((activity): PlanMove[] => {
    const own = (all: readonly Placement[]): Placement[] =>
      all
        .filter((placement) => placement.activity === activity)
        .toSorted((a, b) => a.from - b.from);
    const [was, is] = [own(before), own(after)];
    if (placesText(plan, was) === placesText(plan, is)) return [];
    const kind =
      was.length === 0 ? 'new' : is.length === 0 ? 'out' : moved.has(activity) ? 'window' : 'time';
    return [{ activity, kind, was, is }];
  });
}

export const planChanges = (...asked: Parameters<typeof planMoves>): readonly PlanChange[] =>
  planMoves(...asked).map(({ was, is, ...move }) => ({
    ...move,
    was: placesText(asked[0], was),
    is: placesText(asked[0], is),
  }));

const placesText = (plan: Zoned, placements: readonly Placement[]): string =>
  placements.map((placement) => placeText(placement, zoneIn(plan, placement))).join('; ');

/** The zone whose clocks a visit goes by. */
export const zoneIn = ({ windows, zone }: Zoned, { window }: Pick<Placement, 'window'>): string =>
  windows.find(({ id }) => id === window)?.zone ?? zone;

/** `N1 2027-03-27 22:20 to 2027-03-28 00:20 (3 units)`. */
export const placeText = (
  { window, from, to, units }: Omit<Placement, 'activity'>,
  zone: string,
): string =>
  `${window ?? 'outside'} ${minuteText(from, zone)} to ${minuteText(to, zone)}${units === undefined ? '' : ` (${units} units)`}`;
