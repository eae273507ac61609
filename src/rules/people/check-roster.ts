import { dayAt, MINUTE, type Interval } from '../../calendar/index.js';
import {
  problemsOf,
  type Assignment,
  type Fault,
  type Limit,
  type LimitSet,
  type Problem,
  type Sourced,
} from '../../model/index.js';
import type { TurnProblems } from '../site-problems.js';
import { smallestCure, type Cure } from './cure.js';
import { nightWorked } from './local-days.js';
import { measure, type Measure } from './measure.js';
import type { Turn } from './turn.js';

const problemOf = problemsOf<TurnProblems>();

/** A limit broken by a turn. */
export interface Breach extends Sourced {
  readonly assignment: string;
  readonly crew: string;
  /** Kind of limit; `overlap` (a crew in two places at once) is always checked. */
  readonly limit: Limit['limit'] | 'overlap';
  readonly name: string;
  readonly allowed: number;
  readonly found: number;
  readonly excess: number;
  readonly unit: Measure['unit'];
  readonly over: Interval;
  readonly cure: Cure;
}

export interface RosterCheck {
  /** Sorted by crew, time and limit. */
  readonly breaches: readonly Breach[];
  /** Assignments that could not be checked. */
  readonly faults: readonly Fault[];
  /** Must be shown with the result. */
  readonly caution: string;
}

const caution =
  'Arithmetic on booked hours, not a fatigue assessment: meeting every limit does not show that people are fit for work.';

/** A breach of which the smallest change that ends it is not worked out yet. */
export type Finding = Omit<Breach, 'cure'> & { readonly cureOf: () => Cure };

export interface RosterFindings {
  readonly findings: readonly Finding[];
  readonly faults: readonly Fault[];
}

/** Checks a roster without working out any cure: what is tried on a roster asks for none. Sorted as breaches are. */
export type RosterChecker = (
  assignments: readonly Assignment[],
  limits?: readonly Limit[],
) => RosterFindings;

/**
 * Checks every turn of a roster against every limit: each breach, by how much, and the smallest change that ends it.
 *
 * Minutes are elapsed ones, so a turn over the autumn clock change is an hour longer than its clock times; days, weeks
 * and nights are local ones in `zone`. Each crew is checked on its own. Breaks inside a turn are unknown and not
 * checked. O(turns x turns that a limit looks back over).
 */
export function checkRoster(
  assignments: readonly Assignment[],
  set: LimitSet,
  zone: string,
): RosterCheck {
  const { findings, faults } = rosterChecker(set, zone)(assignments);
  const breaches = findings.map(({ cureOf, source, sureness, ...rest }): Breach => ({
    ...rest,
    cure: cureOf(),
    source,
    sureness,
  }));
  return { breaches, faults, caution };
}

/** A checker that remembers the days and nights of turns: of a roster tried again and again few turns are new. */
export function rosterChecker(set: LimitSet, zone: string): RosterChecker {
  const bare = new WeakMap<Assignment, Turn>();
  const withTravel = new WeakMap<Assignment, Turn>();
  const turnFor = (assignment: Assignment, travels: boolean): Turn => {
    const turns = travels ? withTravel : bare;
    const turn = turns.get(assignment) ?? turnOf(assignment, travels, set, zone);
    turns.set(assignment, turn);
    return turn;
  };
  return (assignments, limits = set.limits) => {
    const faults: Fault[] = [];
    const crews = new Map<string, Assignment[]>();
    assignments.forEach((assignment, row) => {
      const fault = faultOf(assignment, row);
      const crew = crews.get(assignment.crew);
      if (fault) faults.push(fault);
      else if (crew) crew.push(assignment);
      else crews.set(assignment.crew, [assignment]);
    });
    const findings: Finding[] = [];
    for (const crew of [...crews.keys()].sort()) {
      const roster = crews.get(crew)!.sort((a, b) => a.start - b.start || a.end - b.end);
      const looks = limits.map((limit) => {
        const travels = (limit.travel ?? set.travel) === 'counted';
        return { limit, travels, turns: roster.map((turn) => turnFor(turn, travels)) };
      });
      roster.forEach((assignment, at) => {
        const clash = overlapOf(assignment, roster[at - 1]);
        if (clash) findings.push(clash);
        for (const { limit, travels, turns } of looks) {
          const found = measure(limit, { turns, at, zone });
          if (!found) continue;
          findings.push({
            assignment: assignment.id,
            crew,
            limit: limit.limit,
            name: limit.name,
            allowed: found.allowed,
            found: found.found,
            excess: found.excess,
            unit: found.unit,
            over: found.over,
            cureOf: () =>
              cureOf(assignment, found, (changed) => {
                const tried = turns.with(at, turnOf(changed, travels, set, zone));
                return measure(limit, { turns: tried, at, zone }) !== undefined;
              }),
            source: limit.source,
            sureness: limit.sureness,
          });
        }
      });
    }
    return { findings, faults };
  };
}

function cureOf(
  assignment: Assignment,
  found: Measure,
  breaks: (changed: Assignment) => boolean,
): Cure {
  if (found.shedMinutes !== undefined)
    return { change: 'work less in the period', minutes: found.shedMinutes };
  // A turn moved past midnight is counted on another day, but it is still a turn: only dropping it is a cure.
  if (found.unit !== 'minutes') return { change: 'drop', assignment: assignment.id };
  return smallestCure(assignment, breaks);
}

function turnOf(assignment: Assignment, travels: boolean, set: LimitSet, zone: string): Turn {
  const travel = travels ? assignment.travelMinutes * MINUTE : 0;
  const duty = { start: assignment.start - travel, end: assignment.end + travel };
  const night = nightWorked(
    duty,
    { from: set.nightFrom, to: set.nightTo, leastMinutes: set.nightLeastMinutes },
    zone,
  );
  const turn = { assignment: assignment, duty, day: dayAt(duty.start, zone) };
  return night === undefined ? turn : { ...turn, night };
}

function overlapOf(assignment: Assignment, before: Assignment | undefined): Finding | undefined {
  if (!before || before.end <= assignment.start) return undefined;
  const end = Math.min(before.end, assignment.end);
  const minutes = Math.round((end - assignment.start) / MINUTE);
  return {
    assignment: assignment.id,
    crew: assignment.crew,
    limit: 'overlap',
    name: 'One crew, one turn at a time',
    allowed: 0,
    found: minutes,
    excess: minutes,
    unit: 'minutes',
    over: { start: assignment.start, end },
    cureOf: () => smallestCure(assignment, (changed) => changed.start < before.end),
    source: 'a crew cannot be in two places',
    sureness: 'our own',
  };
}

function faultOf(assignment: Assignment, row: number): Fault | undefined {
  const { id: turn, start, end, travelMinutes } = assignment;
  const say = (problem: Problem, column: string): Fault => ({
    ...problem,
    severity: 'error',
    file: 'roster',
    row,
    column,
  });
  if (!Number.isFinite(start) || !Number.isFinite(end) || end <= start)
    return say(problemOf('turn-ends-before-start', { turn }), 'end');
  if (!Number.isFinite(travelMinutes) || travelMinutes < 0)
    return say(problemOf('bad-travel', { turn }), 'travel minutes');
  return undefined;
}
