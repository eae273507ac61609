export { averageDay, type AverageDay } from './averages.js';
export { checkRoster, type Breach, type RosterCheck } from './check-roster.js';
export { crewsNeeded, type CrewPlan } from './crews-needed.js';
export { cured, type Cure } from './cure.js';
export {
  limitSchema,
  limitSetSchema,
  type Limit,
  type LimitKind,
  type LimitSet,
} from './limit-set.js';
export { nightOf, type NightBand } from './local-days.js';
export { surenessSchema, surenesses, type Sourced, type Sureness } from './sourced.js';
export type { Assignment } from './turn.js';
