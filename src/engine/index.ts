export { createInlineEngine } from './inline-engine.js';
export { createPortEngine } from './port-engine.js';
export { createWorkerEngine } from './worker-engine.js';
export { serve } from './serve.js';
export { recompute } from './recompute.js';
export type { Port } from './protocol.js';
export type {
  Actual,
  AllocateOptions,
  Allocation,
  BookAnswer,
  BookingRules,
  BookRequest,
  Certificate,
  CostCurve,
  CostStep,
  CutOff,
  Engine,
  ExpectedCost,
  FitVerdict,
  HandbackRequest,
  HandbackResult,
  ImportedFile,
  ImportReport,
  ImportResult,
  KeyDateForecast,
  Ledger,
  LedgerRow,
  LiveForecast,
  Milestone,
  Objective,
  PackageSummary,
  Placement,
  PlanEvent,
  PriceAnswer,
  PriceRequest,
  PriceResult,
  PriceRow,
  Progress,
  Reason,
  Results,
  UnitOutlook,
} from './types.js';
