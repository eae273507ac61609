import type { Instant } from '../../../calendar/index.js';
import { eachOnce } from '../../../model/index.js';
import { asPlanned, refused, type Draft } from '../draft.js';
import { entryOf, type Entry } from '../entry.js';
import { addUp, priceDraft } from '../price-draft.js';
import { activityOf, type Situation } from '../situation.js';
import { bestCutOff, cutOffEntry } from '../stop/cut-off.js';
import { leftovers } from '../stop/leftovers.js';
import { chooseRepeated, repeatedIn } from '../stop/repeated.js';
import { stopRuns } from '../stop/stop-outlook.js';
import type { RefusedOption } from '../types.js';

/**
 * A draft under a rule for the shift: no unit of its repeated work begins after a moment. Each simulated shift leaves what it
 * has not begun by then to the windows that follow. Null when stopped.
 */
export function wishedCutOff(
  at: Situation,
  draft: Draft,
  cutOffAt: Instant,
): Entry | RefusedOption | null {
  const work = draft.here[0]!;
  const then: Situation = {
    ...at,
    document: draft.document,
    plan: draft.plan,
    trains: draft.trains,
    window: work.window,
    planned: work,
    request: {
      ...at.request,
      cutOffAt,
      allocation: { ...at.request.allocation, placements: draft.placements },
    },
  };
  const chosen = chooseRepeated(repeatedIn(then), at.request.activity);
  if ('reason' in chosen) return refused(draft.id, 'own', draft.name, chosen.state, chosen.reason);
  const activity = activityOf(then, chosen.activity);
  const priced = priceDraft(draft, at);
  // What is left over is held against the draft itself: what the draft changes elsewhere is added once, below.
  const alone = priced && priceDraft(asPlanned(then), then);
  const left = alone && leftovers(then, activity, alone, () => undefined);
  const runs = left && stopRuns(then, activity, chosen.units);
  const cut = runs && bestCutOff(then, activity, left, runs, priced);
  if (!cut) return null;
  if ('reason' in cut) return refused(draft.id, 'own', draft.name, 'infeasible', cut.reason);
  const elsewhere = addUp([cut.elsewhere, priced.overrunElsewhere]);
  const costs = { ...cut.costs, varying: addUp([cut.overrun, elsewhere, cut.again]) };
  const { option, turn } = cutOffEntry(then, activity.id, { ...cut, elsewhere, costs }, priced);
  const base = entryOf(priced, at).option;
  return {
    option: {
      ...option,
      ...{ id: draft.id, kind: 'own', name: draft.name },
      changes: [...draft.changes, ...option.changes],
      notes: eachOnce([...base.notes, ...option.notes]),
      edit: base.edit,
      moved: base.moved,
      keyDates: base.keyDates,
    },
    costs,
    turn,
  };
}
