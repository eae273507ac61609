export { allocate, type AllocateOptions } from './allocate.js';
export { repair, type Moved, type More, type Repair } from '../repair/repair.js';
export { replan, type Move, type Replan } from '../repair/replan.js';
export {
  shortNotice,
  type KeyDateGain,
  type ShortNotice,
  type ShortNoticeOptions,
} from '../repair/short-notice.js';
export { boundWith, leftOpenIn, wholeBlocksIn, type LeftOpen } from '../problem/left-open.js';
export { leftOpenNotes, unstatedIn, type Unstated } from '../unstated.js';
export type {
  ActivityFloat,
  Allocation,
  Certificate,
  KeyDateForecast,
  Objective,
  ObjectiveValue,
  Unplaced,
} from './types.js';
