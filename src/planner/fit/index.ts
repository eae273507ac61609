export { fitAll, fitOne, fitsByPackage, placementsOf, verdictOf } from './fit.js';
export { packagesIn } from '../problem/packages-in.js';
export { NO, plainCode, quickStates, stateOf, type QuickState } from './quick.js';
export { mostThatFits } from './most.js';
export { NOT_WORKED_OUT } from './timed.js';
export { PairVerdict, type Explainer } from './pair-verdict.js';
export { LedgerCache } from '../problem/ledger-cache.js';
export { problemOf, type Relaxation, type Scope } from '../problem/compile.js';
export {
  afterTie,
  beforeTie,
  isOwed,
  visitMinutes,
  type Cure,
  type Due,
  type Problem,
  type Slot,
  type Task,
  type Tie,
  type Visit,
} from '../problem/problem.js';
export {
  areaFree,
  copyOf,
  firstFree,
  freeUntil,
  latestFree,
  mostFree,
  take,
  type Profile,
} from '../problem/profile.js';
export { Board } from '../problem/board.js';
export { headsOf, type Heads } from '../problem/heads.js';
export {
  compareScores,
  scoreBound,
  scoreOf,
  searchAll,
  unitsLeftOut,
  weightOf,
  type ExactAnswer,
  type Order,
  type Score,
} from './exact.js';
export { boardOf, listBy, placeAll, tailsOf } from '../problem/serial.js';
export { fewestCauses } from './causes.js';
export { decide, type Decision } from './decide.js';
export { isProvablyInfeasible } from './infeasible.js';
export { latestOf } from '../problem/latest.js';
export { reach } from './reach.js';
export { scheduleAlone } from './schedule-alone.js';
export { shiftReason } from './shift-reason.js';
export type { FitVerdict, MostThatFits, Placement, Reason } from './types.js';
