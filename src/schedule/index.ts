export { allocate, type AllocateOptions } from './allocate.js';
export {
  criticalPath,
  type CriticalPath,
  type NetworkActivity,
  type NetworkLink,
  type NetworkTimes,
} from './critical-path.js';
export { replan, type Move, type Replan } from './replan.js';
export {
  shortNotice,
  type KeyDateGain,
  type ShortNotice,
  type ShortNoticeOptions,
} from './short-notice.js';
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
