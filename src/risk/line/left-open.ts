import {
  boundsOf,
  unitsLeft,
  type AccessWindow,
  type Activity,
  type Bound,
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
  const work = workIn(plan, window, placements, actuals);
  return {
    notPlaced: notPlacedIn(plan, window, placements),
    whole: lineOf('', work),
    lines: window.lines.map((line) => lineOf(line, work)),
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
    placements
      .filter((placement) => placement.window === window.id)
      .map((placement) => placement.activity),
  );
  const packages = new Set(
    plan.activities.filter((activity) => here.has(activity.id)).map((activity) => activity.package),
  );
  const fixedHere = (activity: Activity): boolean => activity.window === window.id;
  const asked = plan.activities.filter(
    (activity) =>
      fixedHere(activity) || (activity.window === undefined && packages.has(activity.package)),
  );
  const ids = new Set(asked.map((activity) => activity.id));
  const placed = placements.filter((placement) => ids.has(placement.activity));
  return asked.flatMap((activity) => {
    const left = unitsWithout(activity, placed);
    if (left === 0) return [];
    const { id, title, work } = activity;
    return [
      {
        activity: id,
        title,
        ...(work.kind === 'units' && { units: left }),
        fixedHere: fixedHere(activity),
      },
    ];
  });
}

function unitsWithout({ id, work }: Activity, placements: readonly Placement[]): number {
  const own = placements.filter((placement) => placement.activity === id);
  if (work.kind === 'whole') return own.length > 0 ? 0 : 1;
  const placed = own.reduce((sum, placement) => sum + (placement.units ?? unitsLeft(work)), 0);
  return Math.max(0, unitsLeft(work) - placed);
}

const needsLine = ({ lines, place }: Activity, line: string): boolean =>
  place === 'inside' && (line === '' || lines.length === 0 || lines.includes(line));

/** What the handback of each line of a window is told from. */
interface WorkIn {
  readonly window: AccessWindow;
  /** Activities that are placed in the window, by id. */
  readonly rows: ReadonlyMap<string, Activity>;
  /** Placements in the window, and those of its activities in any. */
  readonly here: readonly Placement[];
  readonly placed: readonly Placement[];
  readonly finished: ReadonlySet<string>;
  readonly bounds: readonly Bound[];
}

function workIn(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  actuals: readonly Actual[] = [],
): WorkIn {
  const here = placements.filter((placement) => placement.window === window.id);
  const ids = new Set(here.map((placement) => placement.activity));
  return {
    window,
    here,
    rows: new Map(
      plan.activities
        .filter((activity) => ids.has(activity.id))
        .map((activity) => [activity.id, activity]),
    ),
    placed: placements.filter((placement) => ids.has(placement.activity)),
    finished: new Set(
      actuals.flatMap((actual) =>
        actual.activity !== undefined && actual.finishedAt !== undefined ? [actual.activity] : [],
      ),
    ),
    bounds: boundsOf(plan.activities),
  };
}

function lineOf(
  line: string,
  { window, rows, here, placed, finished, bounds }: WorkIn,
): LineHandback {
  const on = here.filter((placement) => needsLine(rows.get(placement.activity)!, line));
  const ids = [...new Set(on.map((placement) => placement.activity))];
  // Of repeated work the window of its last unit holds what makes it good.
  const lastHere = (id: string): boolean =>
    unitsWithout(rows.get(id)!, placed) === 0 &&
    placed
      .filter((placement) => placement.activity === id)
      .reduce((last, placement) => (placement.to > last.to ? placement : last)).window ===
      window.id;
  const members = bounds
    .filter((bound) => ids.includes(bound.activity) && lastHere(bound.activity))
    .map((bound) => ({ ...bound, missing: bound.members.filter((id) => !rows.has(id)) }));
  // What makes work on this line good keeps it, whatever lines that needs itself.
  const makers = members.flatMap((member) => member.members.filter((id) => rows.has(id)));
  const needed = [...new Set([...ids, ...makers])];
  const open = needed.filter((id) => !finished.has(id));
  const notMadeGood = members
    .filter((member) => member.missing.length > 0)
    .map((member) => member.activity);
  const ends = here
    .filter((placement) => needed.includes(placement.activity))
    .map((placement) => placement.to);
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
