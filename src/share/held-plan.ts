import { OpenPlan } from '../plan/open.js';
import type { HeldPlan } from './plan-guard.js';

/** A plan as a desk keeps it: what a change must keep to is said there. */
export function holdPlan(changes: readonly Uint8Array[]): HeldPlan | undefined {
  const plan = OpenPlan.from(changes);
  return (
    plan && {
      doc: plan.doc,
      get name() {
        return plan.document.name;
      },
      take: (change) => plan.incoming(change, 'share').refused,
      close: () => plan.close(),
    }
  );
}
