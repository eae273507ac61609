import type { Instant } from '../../calendar/index.js';
import type { Placement, Plan } from '../../model/index.js';
import { breachesOf } from '../repair/breaches.js';
import { standingOf } from './standing.js';

/** What of a plan is frozen, parted by whether it can keep its place. */
export interface Frozen {
  readonly kept: readonly Placement[];
  /** Pieces that begin before the moment and cannot stay as they are: their window is gone or cut, or they clash. */
  readonly lost: readonly { readonly placement: Placement; readonly text: string }[];
}

/** The pieces of a plan that begin before a moment, as far as they still hold among themselves in the plan as it is now. */
export function frozenIn(plan: Plan, placements: readonly Placement[], until: Instant): Frozen {
  const early = placements.filter((placement) => placement.from < until);
  const { standing, gone } = standingOf(plan, early);
  const lost = gone.map(({ placement, text }) => ({ placement, text }));
  let kept = standing;
  // What is let go may be what another piece waited for, so it is asked again until all that is left holds.
  for (;;) {
    const broken = new Map(breachesOf(plan, kept).map((breach) => [breach.activity, breach.text]));
    if (broken.size === 0) return { kept, lost };
    lost.push(
      ...kept.flatMap((placement) => {
        const text = broken.get(placement.activity);
        return text === undefined ? [] : [{ placement, text }];
      }),
    );
    kept = kept.filter((placement) => !broken.has(placement.activity));
  }
}
