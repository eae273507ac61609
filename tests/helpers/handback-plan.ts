import { addMinutes, type Instant } from '../../src/calendar/index.js';
import type { Placement } from '../../src/planner/fit/types.js';
import {
  ruleSetSchema,
  type AccessWindow,
  type Activity,
  type Plan,
  type RuleSet,
  type UnitWork,
  type WholeWork,
} from '../../src/model/index.js';

export const nightStart: Instant = Date.UTC(2026, 1, 14, 23, 0);

/** Minutes after the start of the invented night. */
export const at = (minutes: number): Instant => addMinutes(nightStart, minutes);

export function aWindow(over: Partial<AccessWindow> = {}): AccessWindow {
  return {
    id: 'W1',
    title: 'Deck renewal night',
    start: nightStart,
    end: at(480),
    zone: 'UTC',
    lines: [],
    isolation: [],
    status: 'confirmed',
    trainsAfter: '',
    ...over,
  };
}

export function anActivity(
  id: string,
  work: WholeWork | UnitWork,
  over: Partial<Activity> = {},
): Activity {
  return {
    id,
    package: 'P1',
    title: `Activity ${id}`,
    after: [],
    work,
    lines: [],
    isolation: [],
    resources: [],
    loud: false,
    place: 'inside',
    ...over,
  };
}

export const whole = (minutes: number, low?: number, high?: number): WholeWork => ({
  kind: 'whole',
  minutes,
  ...(low !== undefined && high !== undefined && { spread: { low, high } }),
});

export function rulesWith(over: object = {}): RuleSet {
  return ruleSetSchema.parse({
    schema: 1,
    name: 'Invented rules',
    leadIn: [
      { step: 'Place protection', minutes: 30 },
      { step: 'Isolate and earth', minutes: 45, low: 30, high: 90, when: 'isolation' },
    ],
    leadOut: [
      { step: 'Give up isolation', minutes: 20, when: 'isolation' },
      { step: 'Inspect and test', minutes: 30, low: 25, high: 60 },
    ],
    margin: { minutes: 45 },
    ...over,
  });
}

export function aPlan(activities: readonly Activity[], over: Partial<Plan> = {}): Plan {
  return {
    zone: 'UTC',
    windows: [aWindow()],
    activities,
    resources: [],
    rules: rulesWith(),
    ...over,
  };
}

export const placed = (activity: string, from: number, to: number, units?: number): Placement => ({
  activity,
  window: 'W1',
  from: at(from),
  to: at(to),
  ...(units !== undefined && { units }),
});
