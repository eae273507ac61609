import { englishProblems } from '../english/problems.js';
import { wordsOf, type PlanFault } from '../../model/index.js';
import { leftOpenIn } from '../../planner/search/index.js';
import { verify } from '../../verify/index.js';
import { sitePlan } from '../site/site-plan.js';
import { refused, type Draft } from './draft.js';
import type { Situation } from './situation.js';
import type { RefusedOption } from './types.js';

type Checked = Pick<Draft, 'plan' | 'placements' | 'unplaced'>;

/** What the independent check finds of an option's plan of the work. */
export function faultsOf(
  { plan, placements, unplaced }: Checked,
  at: Situation,
): readonly PlanFault[] {
  const before = at.request.allocation.unplaced;
  const lost = new Set(unplaced.map((item) => item.activity));
  return verify(plan, {
    placements,
    unplaced: [...unplaced, ...before.filter((item) => !lost.has(item.activity))],
  }).filter((fault) => fault.code !== 'listed-though-placed');
}

/** Those of its faults that the plan as it stands has not. */
export const newFaults = (draft: Checked, at: Situation): readonly PlanFault[] =>
  faultsOf(draft, at).filter((fault) => !at.known.has(JSON.stringify(fault)));

/** The draft, unless its plan has a fault, or leaves the line open, where the plan as it stands has and does not. */
export function sound(draft: Draft | RefusedOption, at: Situation): Draft | RefusedOption {
  if ('state' in draft) return draft;
  const why = unreadIn(draft, at) || openIn(draft, at) || faultyIn(draft, at);
  return why === '' ? draft : refused(draft.id, draft.kind, draft.name, 'infeasible', why);
}

/** What it newly leaves open, in words; empty: nothing. */
export function openIn({ plan, placements }: Checked, at: Situation): string {
  const before = new Set(
    leftOpenIn(at.plan, at.planned.placements).map((leftOpen) => leftOpen.activity),
  );
  const open = leftOpenIn(plan, placements).filter((leftOpen) => !before.has(leftOpen.activity));
  return open.length === 0 ? '' : `${open.map((leftOpen) => leftOpen.text).join('; ')}.`;
}

/** What the independent check newly finds, in words; empty: nothing. */
export function faultyIn(draft: Checked, at: Situation): string {
  const faults = newFaults(draft, at);
  return faults.length === 0 ? '' : `${faults.map((fault) => fault.text).join('; ')}.`;
}

/** Why rows of work that are still in the table cannot be read any more once it is changed so; empty where all can. */
function unreadIn({ plan, document }: Draft, at: Situation): string {
  if (plan === at.plan) return '';
  const there = new Set(plan.activities.map((activity) => activity.id));
  const { rows } = document.tables.work;
  const gone = at.plan.activities.filter(
    ({ id }) => !there.has(id) && rows.some((row) => row.some((cell) => cell.trim() === id)),
  );
  if (gone.length === 0) return '';
  const why = sitePlan(document).faults.find((fault) => fault.severity === 'error');
  return `${gone.map((activity) => activity.id).join(', ')} could not be planned so. ${why ? wordsOf(why, englishProblems)[0] : ''}`.trim();
}
