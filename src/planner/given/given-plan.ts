import { MINUTE } from '../../calendar/index.js';
import { byTime, type Placement, type Plan, type Proof } from '../../model/index.js';
import { boundOf } from '../bounds/bounds.js';
import { breachesOf } from '../repair/breaches.js';
import { Board, LedgerCache, problemOf, type Problem, type Visit } from '../fit/index.js';
import { floatsOf } from '../floats/floats.js';
import { keyDatesOf } from '../floats/key-dates.js';
import { Pusher } from '../floats/slip.js';
import { planId } from '../plan-id.js';
import { sayOfPlan } from '../plan-sentences.js';
import { certificateOf } from '../search/certificate.js';
import { finishOf } from '../search/finish.js';
import { fullScoreOf, goalOf, windowsIn } from '../search/objectives.js';
import type { Certificate, Objective } from '../search/types.js';
import { leftOpenNotes, unstatedIn } from '../unstated.js';
import { unplacedOf } from '../search/unplaced.js';
import { speaksOf, withProof } from './proof.js';
import { standingOf } from './standing.js';
import type { Broken, GivenPlan, StandingPlan } from './types.js';

export interface GivenOptions {
  readonly first?: Objective;
  /** What a search proved of the plan when it was made; it counts where nothing has changed since. */
  readonly proof?: Proof | undefined;
}

/** What of a plan of work that was made before still stands in the plan as it is now. */
export function standingPlan(plan: Plan, placements: readonly Placement[]): StandingPlan {
  const { standing, gone } = standingOf(plan, placements.toSorted(byTime));
  const broken: Broken[] = [
    ...gone.map(({ placement, ...why }) => ({ activity: placement.activity, ...why })),
    ...breachesOf(plan, standing),
  ];
  return {
    broken: unique(broken),
    placements: standing,
    unstated: unstatedIn(plan, standing),
    notes: leftOpenNotes(plan, standing),
  };
}

/**
 * What a plan of work that was made before comes to in the plan as it is now: its key dates, floats and what is left
 * over, of the pieces that still stand. Nothing is moved and nothing is searched for.
 */
export function givenPlan(
  plan: Plan,
  placements: readonly Placement[],
  { first, proof }: GivenOptions = {},
): GivenPlan {
  const { broken, ...stands } = standingPlan(plan, placements);
  const windows = plan.windows.filter((window) => window.status !== 'withdrawn');
  const problem = problemOf(plan, { windows, activities: plan.activities }, new LedgerCache(plan));
  const visits = visitsOf(problem, stands.placements);
  const pusher = new Pusher(problem, visits);
  const goal = goalOf(first);
  const board = new Board(problem);
  for (const visit of visits) board.put(visit);
  const certificate = certificateOf(
    goal,
    { score: fullScoreOf(board, goal), bound: boundOf(problem, goal), proven: 0 },
    { cutShort: false, holds: broken.length === 0 },
  );
  return {
    id: planId(placements),
    broken,
    allocation: {
      ...stands,
      unplaced: unplacedOf(plan, problem, visits),
      finishesAt: finishOf(problem, visits),
      windowsUsed: windowsIn(visits),
      keyDates: keyDatesOf(plan, problem, visits, pusher),
      certificate:
        proof && broken.length === 0 && speaksOf(proof, plan, placements, goal.objectives)
          ? withProof(asGiven(certificate), proof)
          : asGiven(certificate),
      floats: floatsOf(problem, visits, pusher),
    },
  };
}

function visitsOf(problem: Problem, placements: readonly Placement[]): Visit[] {
  const tasks = new Map(problem.tasks.map((task) => [task.activity.id, task.index]));
  const windows = new Map(problem.windows.map((window, index) => [window.id, index]));
  return placements.map(({ activity, window, from, to, units = 1 }) => ({
    task: tasks.get(activity)!,
    window: window === null ? -1 : windows.get(window)!,
    start: (from - problem.base) / MINUTE,
    end: (to - problem.base) / MINUTE,
    units,
  }));
}

/** Nobody searched for a plan that was given, and one that does not hold is as good as nothing. */
function asGiven(certificate: Certificate): Certificate {
  if (!certificate.holds)
    return {
      ...certificate,
      proven: false,
      mostPlaced: false,
      ...sayOfPlan('given-broken', {}),
      objectives: certificate.objectives.map((objective) => ({ ...objective, proven: false })),
    };
  if (!certificate.mostPlaced) return { ...certificate, ...sayOfPlan('given-more-might-go', {}) };
  const open = certificate.objectives.find((objective) => !objective.proven);
  if (!open) return certificate;
  const far = { aim: open.name, far: open.value - open.lowerBound };
  return { ...certificate, ...sayOfPlan('given-from-best', far) };
}

function unique(broken: readonly Broken[]): Broken[] {
  return [...new Map(broken.map((item) => [JSON.stringify(item), item])).values()];
}
