export { allocate, type AllocateOptions } from './allocate.js';
export {
  criticalPath,
  type CriticalPath,
  type NetworkActivity,
  type NetworkLink,
  type NetworkTimes,
} from './critical-path.js';
export { verify, type PlacementFault } from './verify.js';
export type {
  ActivityFloat,
  Allocation,
  Certificate,
  KeyDateForecast,
  Objective,
  ObjectiveValue,
  Unplaced,
} from './types.js';
