export { account } from './account/account.js';
export { percentOfShare, shareOfPercent } from './account/claims.js';
export type {
  Account,
  AccountInputs,
  AccountRow,
  ChargeActual,
  Claim,
  StandingActual,
  TrainActual,
} from './account/types.js';
export {
  bestStop,
  type BestStop,
  type StopCandidate,
  type StopChoice,
  type StopInputs,
} from './best-stop.js';
export {
  compareOptions,
  type Comparison,
  type CostOption,
  type OptionCost,
  type OptionResult,
} from './compare-options.js';
export {
  compareWithReference,
  verdictBetween,
  type OptionVerdict,
  type RunComparison,
  type RunCosts,
} from './compare-runs.js';
export { bookingCost, reBookingCost, type BookingRequest, type CostLine } from './booking-cost.js';
export { callOuts, paidTime, type CallOut, type CallOutInputs } from './call-outs.js';
export { costCurve, curveOf } from './cost-curve.js';
export { costModel, type CostInputs, type CostModel } from './cost-model.js';
export {
  countOverruns,
  expectedCost,
  type ExpectedCost,
  type OverrunCount,
} from './expected-cost.js';
export { heldTrains, trainsAfter, type QueueRule } from './held-trains.js';
export type { LostUnits } from './heads/re-booking.js';
export { daysLate, keyDateLines, type KeyDateLine } from './key-dates.js';
export {
  lengthThresholds,
  measureSpan,
  noticeGiven,
  type HoursRule,
  type SpanMeasure,
} from './measure-span.js';
export { decimalText, moneyText, parseMoney, type Coin } from './money.js';
export { overrunCost, resultAt, type OverrunInputs } from './overrun-cost.js';
export { factorRuns, type FactorRun } from './pay-factors.js';
export { headTitles } from './head-titles.js';
export type { StandingInputs } from './standing.js';
export { staysIn, type Stay, type StayInputs } from './on-site.js';
export type {
  CostCurve,
  CostStep,
  CostStepKind,
  HeadCurve,
  HeadOfCost,
  HeldTrain,
  OnSiteRow,
  PriceInput,
  PriceResult,
  PriceRow,
  Rounding,
} from './types.js';
