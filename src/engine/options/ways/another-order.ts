import { MINUTE } from '../../../calendar/index.js';
import { asPlanned, type Draft } from '../draft.js';
import { clearAt, unitsIn } from '../plans.js';
import { refit } from '../refit.js';
import { sayOption } from '../say-option.js';
import { elsewhere, type Situation } from '../situation.js';
import type { RefusedOption } from '../types.js';

/** The same work in the order that clears the line soonest: so that more plant is not praised for a better order. */
export function anotherOrder(at: Situation): Draft | RefusedOption {
  const { window, planned } = at;
  const others = elsewhere(at);
  const tight = refit(at.plan, window, unitsIn(window.id, planned.placements), others, at.time);
  const gained = clearAt(window, planned.placements) - clearAt(window, tight.placements);
  const name = sayOption('another-order');
  const named = { id: 'order', kind: 'another-order', name } as const;
  if (tight.unplaced.length > 0 || gained <= 0)
    return {
      ...named,
      state: 'nothing-to-vary',
      reason: sayOption('no-order-sooner'),
    };
  const placements = [...others, ...tight.placements];
  return {
    ...asPlanned(at),
    ...named,
    changes: [sayOption('order-clear-sooner', { minutes: gained / MINUTE })],
    here: [{ ...planned, placements }],
    placements,
    turn: { what: sayOption('change-of-order'), minor: 0 },
  };
}
