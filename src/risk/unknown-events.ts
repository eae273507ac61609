import type { Plan, RiskEvent } from '../model/index.js';
import { grantStep, handedBackStep } from './types.js';

/** An event that names a window, an activity or a step that the plan has not: it would never happen, in silence. */
export interface UnknownEvent {
  readonly event: string;
  readonly of: 'window' | 'activity' | 'step';
  readonly name: string;
}

export function unknownEvents(
  plan: Plan,
  events: readonly RiskEvent[] = plan.rules.risk?.events ?? [],
): readonly UnknownEvent[] {
  const known = {
    window: new Set(plan.windows.map((window) => window.id)),
    activity: new Set(plan.activities.map((activity) => activity.id)),
    step: new Set([
      grantStep,
      handedBackStep,
      ...[...plan.rules.leadIn, ...plan.rules.leadOut].map((item) => item.step),
    ]),
  };
  return events.flatMap((event) =>
    (['window', 'activity', 'step'] as const).flatMap((of) => {
      const name = event[of];
      return name === undefined || known[of].has(name) ? [] : [{ event: event.name, of, name }];
    }),
  );
}
