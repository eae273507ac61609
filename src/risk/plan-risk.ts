import type { AccessWindow, PlanRules } from '../model/index.js';
import type { HandbackOptions, PlanEvent } from './types.js';

/**
 * The options with what the plan's rules say of risk where the options say nothing: shape, common factor, events of this
 * window and the chance wanted.
 */
export function withPlanRisk(
  { risk, handback }: PlanRules,
  window: AccessWindow,
  options: HandbackOptions,
): HandbackOptions {
  const events = options.events ?? (risk ? eventsOf(risk, window) : undefined);
  const distribution = options.distribution ?? risk?.shape;
  const commonFactor = options.commonFactor ?? risk?.commonFactor;
  const confidence = options.confidence ?? handback?.chance;
  return {
    ...options,
    ...(events && { events }),
    ...(distribution && { distribution }),
    ...(commonFactor && { commonFactor }),
    ...(confidence !== undefined && { confidence }),
  };
}

function eventsOf(
  { events }: NonNullable<PlanRules['risk']>,
  window: AccessWindow,
): readonly PlanEvent[] {
  return events
    .filter((event) => event.window === undefined || event.window === window.id)
    .map(({ name, chance, delay, activity, step, stage, at }) => ({
      name,
      probability: chance,
      delay,
      ...(activity !== undefined && { activity }),
      ...(step !== undefined && { step }),
      ...(stage !== undefined && { stage }),
      ...(at !== undefined && { at: Date.parse(at) }),
    }));
}
