import { joined, type Phrase, type PlanFault } from '../../model/index.js';
import { leftOpenIn } from '../../planner/search/index.js';
import { verify } from '../../verify/index.js';
import { sitePlan } from '../site/site-plan.js';
import { refused, type Draft } from './draft.js';
import { sayOption } from './say-option.js';
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
  const why = unreadIn(draft, at) ?? ended(unsoundIn(draft, at));
  return why === undefined ? draft : refused(draft.id, draft.kind, draft.name, 'infeasible', why);
}

/** What it newly leaves open, else what the independent check newly finds; undefined: nothing. */
export function unsoundIn(draft: Checked, at: Situation): Phrase | undefined {
  const open = openIn(draft, at);
  const found = open.length > 0 ? open : newFaults(draft, at).map((fault) => fault.text);
  return found.length === 0 ? undefined : joined(found, '; ');
}

const ended = (why: Phrase | undefined): Phrase | undefined =>
  why === undefined ? undefined : joined([why, '.'], '');

function openIn({ plan, placements }: Checked, at: Situation): readonly Phrase[] {
  const before = new Set(
    leftOpenIn(at.plan, at.planned.placements).map((leftOpen) => leftOpen.activity),
  );
  return leftOpenIn(plan, placements)
    .filter((leftOpen) => !before.has(leftOpen.activity))
    .map(({ activity, missing, made }) =>
      'early' in made
        ? sayOption('makers-before-finish', { activity, early: made.early })
        : sayOption('left-not-made-good', { activity, missing, ...made }),
    );
}

/** Why rows of work that are still in the table cannot be read any more once it is changed so; undefined where all can. */
function unreadIn({ plan, document }: Draft, at: Situation): Phrase | undefined {
  if (plan === at.plan) return undefined;
  const there = new Set(plan.activities.map((activity) => activity.id));
  const { rows } = document.tables.work;
  const gone = at.plan.activities.filter(
    ({ id }) => !there.has(id) && rows.some((row) => row.some((cell) => cell.trim() === id)),
  );
  if (gone.length === 0) return undefined;
  const why = sitePlan(document).faults.find((fault) => fault.severity === 'error');
  const activities = gone.map((activity) => activity.id);
  return joined([sayOption('not-planned-so', { activities }), ...(why ? [why] : [])], ' ');
}
