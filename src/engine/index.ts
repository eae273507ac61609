export { createInlineEngine } from './inline-engine.js';
export { createPortEngine } from './port-engine.js';
export { createWorkerEngine, type WorkerEngineOptions } from './worker-engine.js';
export { serve } from './serve.js';
export { recompute } from './recompute.js';
export {
  ruleSketch,
  sketchWindow,
  type RuleSketch,
  type SketchStep,
} from './rule-change/rule-sketch.js';
export { usableWithIsolation } from './isolated-usable.js';
export { windowMoves } from '../planner/given/moves.js';
export { meetingsOf, type Meeting } from './where/meetings.js';
export { wantedByWeek, type WantedResource, type WantedWeek } from './where/wanted.js';
export { goesInPart, partText, shareOf } from '../planner/fit/part-text.js';
export { columnOf } from './column-of.js';
export { certificateSaid, certificateWords, leavesUnsaid } from '../planner/certificate-words.js';
export { planId } from '../planner/plan-id.js';
export { proofOf } from '../planner/given/proof-of.js';
export { bookingCalendar } from './booked-calendar.js';
export { cutOffCalendar } from './handback/cut-off-calendar.js';
export { shiftTable } from './handback/shift-table.js';
export { accountReport } from './report/account-report.js';
export type { ReportBasis, ReportPlan } from './report/facts.js';
export { optionsReport } from './report/options-report.js';
export { overrunReport } from './report/overrun-report.js';
export { tableOfReport } from './report/report-table.js';
export type { Report } from './report/report.js';
export { plainStanding } from '../price/heads/plain-standing.js';
export { headTitles, percentOfShare, shareOfPercent } from '../price/index.js';
export {
  begunBy,
  chainOf,
  chanceText,
  type ChanceWords,
  correctionsOf,
  grantStep,
  handedBackStep,
  recordedSource,
  recordedTail,
  thinTailText,
  lineGrantStep,
  lineOfGrant,
  mergeShiftLogs,
  readShiftLog,
  shiftLogFile,
  shiftState,
} from '../risk/index.js';
export { loadShiftLogReader } from './load-log-reader.js';
export { headingAsks, withHeading, type HeadingAsk } from './heading-answers.js';
export type { CutIsolation } from '../tables/index.js';
export type { PlanToChance } from './handback/plan-to-chance.js';
export type { Port } from './protocol.js';
export type {
  LedgerSentences,
  CalendarSentences,
  PlanCalendarSentences,
  BookingCalendarSentences,
  LiveSentences,
  NoteSentences,
  PlanSentences,
  FormulaSentences,
  FaultSentences,
  OptionSentences,
  PriceSentences,
  ReasonSentences,
  ReportSentences,
  ReportWords,
  RepairSentences,
  Sentences,
} from './sentences.js';
export type {
  Account,
  Broken,
  GivenPlan,
  WindowMove,
  AccountRequest,
  AccountRow,
  ChargeActual,
  Claim,
  StandingActual,
  TrainActual,
  Actual,
  AllocateOptions,
  ChanceOptions,
  Allocation,
  BookAnswer,
  BookedWindow,
  BookingRules,
  BookRequest,
  Certificate,
  CostCurve,
  CostStep,
  CutOff,
  Engine,
  ExpectedCost,
  KeyDateLine,
  FitsChange,
  FitVerdict,
  GainedFit,
  HandbackProgress,
  HandbackRequest,
  HandbackResult,
  ImportedFile,
  ImportReport,
  ImportResult,
  KeyDateForecast,
  KeyDateGain,
  Ledger,
  LedgerRow,
  LiveForecast,
  LostFit,
  Milestone,
  Move,
  Objective,
  KeyDateChange,
  MovedWork,
  OptionHandback,
  OptionKind,
  OptionOutcome,
  OptionPart,
  OptionsAnswer,
  OptionsRequest,
  OptionWish,
  OwnOption,
  PackageChange,
  PackageSummary,
  PricedOption,
  RefusedOption,
  StopOutlook,
  StopRow,
  Placement,
  PlanEvent,
  PriceAnswer,
  PriceRequest,
  PriceResult,
  PriceRow,
  Progress,
  SearchProgress,
  Reason,
  Replan,
  Results,
  RuleChange,
  ShiftEntry,
  ShiftEvent,
  ShiftLog,
  ShortNotice,
  UnreadHeadings,
  UnitOutlook,
  UsableChange,
  WorkKind,
} from './types.js';
export type {
  ConcreteAnswer,
  CuringOfPour,
  LiftingAnswer,
  LiftingRequest,
  LoudStretch,
  NoiseAnswer,
  NoiseOfActivity,
  NoiseRequest,
  PeopleAnswer,
  PeopleRequest,
  RosterBreach,
  RosterTurn,
  WindAnswer,
  WindOfWindow,
  WindowCrews,
} from './site/types.js';
