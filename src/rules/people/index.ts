export { averageDay, type AverageDay } from './averages.js';
export { checkRoster, type Breach, type RosterCheck } from './check-roster.js';
export { crewsNeeded, type CrewPlan } from './crews-needed.js';
export { missingCompetences } from './competence.js';
export { cured, type Cure } from './cure.js';
export {
  limitSchema,
  limitSetSchema,
  type Limit,
  type LimitKind,
  type LimitSet,
} from '../../model/index.js';
export { exampleHours } from './example-hours.js';
export { nightOf, type NightBand } from './local-days.js';
export { surenessSchema, surenesses, type Sourced, type Sureness } from '../../model/index.js';
export type { Assignment } from '../../model/index.js';
export {
  changed,
  mendAll,
  mendsOf,
  type Mend,
  type MendContext,
  type RosterChange,
} from './mends.js';
