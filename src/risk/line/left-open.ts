import {
  boundsOf,
  unitsLeft,
  type AccessWindow,
  type Activity,
  type Plan,
} from '../../model/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { LeftOpen, LimitLeft, LineHandback, NotPlaced } from './left-open-types.js';
import { speedLimitsAt } from './speed-left.js';
import type { Actual } from '../types.js';

/** What a window leaves open at its handback, by the plan and by what has been seen of the shift. */
export function leftOpen(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  actuals?: readonly Actual[],
): LeftOpen {
  return {
    notPlaced: notPlacedIn(plan, window, placements),
    whole: lineOf('', plan, window, placements, actuals),
    lines: window.lines.map((line) => lineOf(line, plan, window, placements, actuals)),
    speedLimits: limitsLeft(plan, window, placements),
  };
}

/** Work without a place that is fixed to this window, or whose package is worked on in it. */
export function notPlacedIn(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
): readonly NotPlaced[] {
  const here = new Set(
    placements.filter((one) => one.window === window.id).map((one) => one.activity),
  );
  const packages = new Set(
    plan.activities.filter((one) => here.has(one.id)).map((one) => one.package),
  );
  return plan.activities.flatMap((activity) => {
    const fixedHere = activity.window === window.id;
    if (!fixedHere && (activity.window !== undefined || !packages.has(activity.package))) return [];
    const left = unitsWithout(activity, placements);
    if (left === 0) return [];
    const { id, title, work } = activity;
    return [{ activity: id, title, ...(work.kind === 'units' && { units: left }), fixedHere }];
  });
}

function unitsWithout({ id, work }: Activity, placements: readonly Placement[]): number {
  const own = placements.filter((one) => one.activity === id);
  if (work.kind === 'whole') return own.length > 0 ? 0 : 1;
  const placed = own.reduce((sum, one) => sum + (one.units ?? unitsLeft(work)), 0);
  return Math.max(0, unitsLeft(work) - placed);
}

const needsLine = ({ lines, place }: Activity, line: string): boolean =>
  place === 'inside' && (line === '' || lines.length === 0 || lines.includes(line));

function lineOf(
  line: string,
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  actuals?: readonly Actual[],
): LineHandback {
  const rows = new Map(plan.activities.map((one) => [one.id, one]));
  const here = placements.filter((one) => one.window === window.id);
  const on = here.filter((one) => needsLine(rows.get(one.activity)!, line));
  const ids = [...new Set(on.map((one) => one.activity))];
  const finished = new Set(
    (actuals ?? []).flatMap((one) =>
      one.activity !== undefined && one.finishedAt !== undefined ? [one.activity] : [],
    ),
  );
  const placedHere = new Set(here.map((one) => one.activity));
  // Of repeated work the window of its last unit holds what makes it good.
  const lastHere = (id: string): boolean =>
    unitsWithout(rows.get(id)!, placements) === 0 &&
    placements
      .filter((one) => one.activity === id)
      .reduce((last, one) => (one.to > last.to ? one : last)).window === window.id;
  const bounds = boundsOf(plan.activities);
  const members = bounds
    .filter((one) => ids.includes(one.activity) && lastHere(one.activity))
    .map((one) => ({ ...one, missing: one.members.filter((id) => !placedHere.has(id)) }));
  // What makes work on this line good keeps it, whatever lines that needs itself.
  const makers = members.flatMap((one) => one.members.filter((id) => placedHere.has(id)));
  const needed = [...new Set([...ids, ...makers])];
  const open = needed.filter((id) => !finished.has(id));
  const notMadeGood = members.filter((one) => one.missing.length > 0).map((one) => one.activity);
  const ends = here.filter((one) => needed.includes(one.activity)).map((one) => one.to);
  return {
    line,
    plannedClear: ends.length > 0 ? Math.max(...ends) : null,
    open,
    notMadeGood,
    clear: open.length === 0 && notMadeGood.length === 0,
  };
}

/** Limits set by work that is over by this handback, and that later work has not lifted by then. */
function limitsLeft(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
): readonly LimitLeft[] {
  return speedLimitsAt(plan.activities, placements, window.end).flatMap(({ activity, lifted }) =>
    lifted && lifted.at <= window.end
      ? []
      : [
          {
            activity: activity.id,
            title: activity.title,
            limit: activity.speedAfter!,
            liftedBy: lifted && { activity: lifted.activity, window: lifted.window },
          },
        ],
  );
}
