export { begunBy } from './shift/begun-before.js';
export { betaCumulative, betaQuantile, betaShape, type BetaShape } from './kernel/beta-shape.js';
export {
  classicVariance,
  constant,
  cumulativeOf,
  highOf,
  inverseTable,
  lowOf,
  meanOf,
  quantileOf,
  TABLE_CELLS,
  threePoint,
  varianceOf,
  type Distribution,
  type ThreePoint,
  type ThreePointKind,
} from './kernel/distribution.js';
export {
  backwardPass,
  earliestStart,
  forwardPass,
  latestStart,
  topologicalOrder,
  type ClosedStretch,
  type DatedEvent,
  type NodeTimes,
  type RiskLink,
  type RiskNetwork,
  type RiskNode,
} from './kernel/network.js';
export { fillWords, nextWord, randomState, type RandomState } from './kernel/random.js';
export {
  beginSimulation,
  nearestRank,
  outlookOf,
  simulate,
  type Chance,
  type DeadlineOutlook,
  type Quantiles,
  type SimulateOptions,
  type Simulation,
  type SimulationOptions,
  type SimulationResult,
} from './kernel/simulation.js';
export { helpsMost, type Help } from './kernel/helps-most.js';
export type { WhatIf } from './kernel/held-case.js';
export { chancesOnTime } from './kernel/on-time.js';
export { whatIfs, type WhatIfFigures, type WhatIfOptions } from './kernel/what-ifs.js';
export { handback } from './handback.js';
export { marginVerdictOf, reachesChance, surelyReaching, windowVerdictOf } from './verdict.js';
export { handbackNetwork, type HandbackNetwork } from './handback-network/handback-network.js';
export type { NodeMeaning } from './handback-network/network-builder.js';
export { chanceLimits, type ChanceLimit } from './limits/chance-limits.js';
export { unknownEvents, type UnknownEvent } from './unknown-events.js';
export { guardingSteps } from './limits/guarding-steps.js';
export { chainOf } from './shift/log-chain.js';
export { canShow, chanceText, type ChanceWords } from './chance-text.js';
export {
  recordedOverruns,
  recordedSource,
  recordedTail,
  thinTailText,
} from './recorded-overruns.js';
export { leftOpen, notPlacedIn } from './line/left-open.js';
export { speedLimitsAt } from './line/speed-left.js';
export type { LeftOpen, LimitLeft, LineHandback, NotPlaced } from './line/left-open-types.js';
export { windowChance, type WindowChance } from './window-chance.js';
export { pairedFinishes, type PairedCase } from './kernel/paired-runs.js';
export { readShiftLog, type ReadLog } from './shift/log-file.js';
export { shiftLogFile } from './shift/write-log.js';
export { mergeShiftLogs, type MergedLog } from './shift/merge-logs.js';
export {
  appendEntry,
  correctionsOf,
  shiftState,
  type ShiftEntry,
  type ShiftEvent,
  type ShiftFault,
  type ShiftLog,
  type ShiftState,
  type StandingEntry,
} from './shift/shift-log.js';
export {
  defaultConfidence,
  grantStep,
  handedBackStep,
  lineGrantStep,
  lineOfGrant,
  type Actual,
  type Advice,
  type AskedBack,
  type Doubt,
  type CutOff,
  type DecisionPoint,
  type GoPointTime,
  type HandbackOptions,
  type HandbackResult,
  type HandbackSimulation,
  type LiveForecast,
  type LiveOption,
  type MarginVerdict,
  type NotOffered,
  type PlanEvent,
  type Stage,
  type Subject,
  type UnitChance,
  type UnitOutlook,
  type WindowVerdict,
} from './types.js';
