import { isoText } from '../../calendar/index.js';
import type { Placement, Plan } from '../../model/index.js';
import { windowMoves } from '../../planner/given/moves.js';

/** An activity that does not lie as it did in another plan. */
export interface PlanChange {
  readonly activity: string;
  /** `new`: it had no place; `out`: it has none now; `window`: other windows, or other units in them; `time`: other minutes. */
  readonly kind: 'new' | 'out' | 'window' | 'time';
  /** Where it lay and lies, visit by visit: `N1 2027-03-27 22:20 to 2027-03-28 00:20`. */
  readonly was: string;
  readonly is: string;
}

export const changeWords: Readonly<Record<PlanChange['kind'], string>> = {
  new: 'new in the plan',
  out: 'no longer in the plan',
  window: 'in another window',
  time: 'same window, other time',
};

/** What lies otherwise in the second plan than in the first, in the order of the plan's activities. */
export function planChanges(
  plan: Pick<Plan, 'activities' | 'windows' | 'zone'>,
  before: readonly Placement[],
  after: readonly Placement[],
): readonly PlanChange[] {
  const moved = new Set(windowMoves(before, after).map((move) => move.activity));
  const textOf = tellerOf(plan);
  const known = plan.activities.map((activity) => activity.id);
  const gone = before.map((placement) => placement.activity).filter((id) => !known.includes(id));
  return [...new Set([...known, ...gone])].flatMap((activity): PlanChange[] => {
    const own = (all: readonly Placement[]): Placement[] =>
      all
        .filter((placement) => placement.activity === activity)
        .toSorted((a, b) => a.from - b.from);
    const [was, is] = [own(before), own(after)];
    const [wasText, isText] = [was, is].map((all) => all.map(textOf).join('; '));
    if (wasText === isText) return [];
    const kind =
      was.length === 0 ? 'new' : is.length === 0 ? 'out' : moved.has(activity) ? 'window' : 'time';
    return [{ activity, kind, was: wasText!, is: isText! }];
  });
}

function tellerOf({
  windows,
  zone,
}: Pick<Plan, 'windows' | 'zone'>): (placement: Placement) => string {
  const zones = new Map(windows.map((window) => [window.id, window.zone]));
  return ({ window, from, to, units }) => {
    const at = (moment: number): string =>
      isoText(moment, (window === null ? undefined : zones.get(window)) ?? zone)
        .slice(0, 16)
        .replace('T', ' ');
    return `${window ?? 'outside'} ${at(from)} to ${at(to)}${units === undefined ? '' : ` (${units} units)`}`;
  };
}
