import { lengthMinutes } from '../../../calendar/index.js';
import type { Phrase, PlanDocument } from '../../../model/index.js';
import { sitePlan } from '../../site/site-plan.js';
import { reasonOf, refused, type Draft } from '../draft.js';
import { clearAt, unitsIn } from '../plans.js';
import { refit } from '../refit.js';
import { sayOption } from '../say-option.js';
import { elsewhere, type Situation } from '../situation.js';
import type { RefusedOption } from '../types.js';
import { bookingOf, noBooking } from './booking.js';
import { settle } from './settle.js';

/** A way that a person made up: a change of the document. */
export function ownOption(
  at: Situation,
  name: string,
  document: PlanDocument,
  place: number,
): Draft | RefusedOption {
  const id = `own ${place + 1}`;
  const { window } = at;
  const next = sitePlan(document);
  const fault = next.faults.find((item) => item.severity === 'error');
  if (fault) return refused(id, 'own', name, 'infeasible', fault);
  const then = next.plan.windows.find((item) => item.id === window.id);
  if (!then || then.status === 'withdrawn')
    return refused(
      id,
      'own',
      name,
      'infeasible',
      sayOption('window-there-no-more', { window: window.id }),
    );
  const planned = planOf(at, next.plan, then);
  if ('reason' in planned) return refused(id, 'own', name, 'infeasible', planned.reason);
  const more = lengthMinutes(then) - lengthMinutes(window);
  const booked = more > 0 ? bookingOf(at, window, more, 0) : noBooking;
  return {
    id,
    kind: 'own',
    name,
    changes: [sayOption('as-you-changed', { name })],
    document,
    ...next,
    here: [{ ...next, window: then, placements: planned.placements }],
    ...planned,
    lines: booked.lines,
    turn: { what: sayOption('making-the-change'), minor: booked.minor },
    notes: [sayOption('change-not-priced')],
  };
}

/** The plan of a changed document: as it was where that still holds and is no slower, otherwise planned anew. */
function planOf(
  at: Situation,
  plan: Situation['plan'],
  window: Situation['window'],
): Pick<Draft, 'placements' | 'unplaced' | 'keyDates'> | { readonly reason: Phrase } {
  const units = unitsIn(window.id, at.planned.placements);
  const others = elsewhere(at);
  const before = refit(at.plan, at.window, units, others, at.time);
  const after = refit(plan, window, units, others, at.time);
  if (after.unplaced.length > 0)
    return {
      reason: sayOption('not-all-fits-any-more', {
        window: window.id,
        why: reasonOf(after.unplaced),
      }),
    };
  const gained = clearAt(at.window, before.placements) - clearAt(window, after.placements);
  const same = gained === 0 && before.unplaced.length === 0;
  return settle(at, plan, same ? at.planned.placements : [...others, ...after.placements]);
}
