import {
  lengthMinutes,
  offsetMinutes,
  overlaps,
  subtract,
  type Interval,
} from '../../calendar/index.js';
import type { AccessWindow, LimitSet, ShiftRule } from '../../model/index.js';
import {
  checkRoster,
  crewsNeeded,
  exampleHours,
  mendAll,
  mendsOf,
} from '../../rules/people/index.js';
import type { PlanResult } from '../../tables/index.js';
import { faultsOfTables } from './table-faults.js';
import type { PeopleAnswer, PeopleRequest, RosterTurn, WindowCrews } from './types.js';

/** More breaches than anyone mends by hand: for those past it no cure is looked for. */
const MENDED = 60;

/** The roster against the limits, with changes that mend it, and the crews that each window takes. */
export function peopleOf(read: PlanResult, request: PeopleRequest): PeopleAnswer {
  const { plan, turns, site } = read;
  const limits = request.limits ?? site.hours ?? exampleHours;
  const context = { set: limits, zone: plan.zone, windows: plan.windows };
  const { breaches, faults, caution } = checkRoster(turns, limits, plan.zone);
  const together =
    breaches.length > MENDED ? { changes: [], left: breaches } : mendAll(turns, context);
  return {
    limits,
    isExample: request.limits === undefined && site.hours === undefined,
    zone: plan.zone,
    turns: turns
      .map((turn) => turnOf(turn, plan.zone))
      .sort((a, b) => (a.crew < b.crew ? -1 : a.crew > b.crew ? 1 : a.start - b.start)),
    breaches: breaches.map((breach, at) => ({
      ...breach,
      mends: at < MENDED ? mendsOf(breach, turns, context) : [],
    })),
    together: { changes: together.changes, left: together.left.length },
    windows: plan.windows
      .filter((window) => window.status !== 'withdrawn')
      .map((window) => crewsOf(window, plan.rules.shifts ?? shiftsBy(limits), turns)),
    faults: [...faultsOfTables(read, 'roster'), ...faults],
    caution,
  };
}

function turnOf(assignment: PlanResult['turns'][number], zone: string): RosterTurn {
  const { id, crew, start, end, travelMinutes, window, competence } = assignment;
  const elapsedMinutes = lengthMinutes(assignment);
  return {
    id,
    crew,
    start,
    end,
    ...(window !== undefined && { window }),
    ...(competence && { competence }),
    travelMinutes,
    elapsedMinutes,
    clockMinutes: elapsedMinutes + offsetMinutes(end, zone) - offsetMinutes(start, zone),
  };
}

/** The turns of a rule set that has none, by the limits: the shortest longest turn and the longest rest. */
function shiftsBy({ limits }: LimitSet): ShiftRule | undefined {
  const longest = limits.flatMap((limit) =>
    limit.limit === 'longest-turn' && limit.on === 'every turn' ? [limit.minutes] : [],
  );
  if (longest.length === 0) return undefined;
  const rests = limits.flatMap((limit) =>
    limit.limit === 'rest-between-turns' && limit.on === 'every turn' ? [limit.minutes] : [],
  );
  return {
    longestMinutes: Math.min(...longest),
    restMinutes: Math.max(0, ...rests),
    changeoverMinutes: 0,
  };
}

function crewsOf(
  window: AccessWindow,
  shift: ShiftRule | undefined,
  turns: PlanResult['turns'],
): WindowCrews {
  // A turn that names its window counts for that one only; others count for whatever window they overlap.
  const its = turns.filter((turn) =>
    turn.window === undefined ? overlaps(turn, window) : turn.window === window.id,
  );
  const manned: Interval[] = its.filter((assignment) => overlaps(assignment, window));
  return {
    window: window.id,
    plan: shift ? crewsNeeded(window, shift) : null,
    rostered: [...new Set(its.map((assignment) => assignment.crew))].sort(),
    unmanned: subtract([{ start: window.start, end: window.end }], manned),
  };
}
