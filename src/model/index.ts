export {
  minutesInOneVisit,
  unitsLeft,
  type Activity,
  type Demand,
  type Link,
  type MadeGoodBy,
  type Occupies,
  type SpeedLimit,
  type Spread,
  type UnitWork,
  type WholeWork,
} from './activity.js';
export { withAgreed, withFrozen, withoutEarlier, type AgreedPlan } from './agreed.js';
export { agreedPlansSchema, provenShape, type AgreedPlans, type Proof } from './agreed-schema.js';
export { cautions, siteCautions } from './cautions.js';
export type { ClosedTime, CuringData, PlanRules, TemperatureStretch } from './closed-time.js';
export {
  emptyPlan,
  emptyTable,
  noRules,
  planTables,
  siteTables,
  tableIn,
  tableKinds,
  type TableKind,
} from './empty-plan.js';
export { problemsOf, type Fault, type ProblemWords, type SayProblem } from './fault.js';
export {
  limitSchema,
  limitSetSchema,
  type Limit,
  type LimitKind,
  type LimitOf,
  type LimitSet,
} from './limit-set.js';
export { boundsOf, samePlace, type Bound } from './line-state.js';
export type { Note, NotePlace, PlanNote } from './note.js';
export type { PlanFault } from './plan-fault.js';
export { noiseLimitsSchema, plantLevelSchema, type NoiseLimits } from './noise-limits.js';
export { latestSchema, migrateDocument, type Migrated } from './migrate.js';
export { deadTimes } from './dead-times.js';
export { needsKey, needsOf, ordinaryNeeds, type Needs } from './needs.js';
export { bookingCountSchema, weeksFrom, type BookingCount } from './booking-count.js';
export { byTime, type Placement } from './placement.js';
export type { Plan } from './plan.js';
export { planFile } from './plan-file.js';
export { planFrom, readPlanFile, type ReadPlan } from './read-plan-file.js';
export { planFileProblem } from './plan-file-problem.js';
export {
  localDateSchema,
  planDocumentSchema,
  tableTextSchema,
  type PlanDocument,
  type TableText,
} from './plan-document.js';
export { priceBookSchema, type PriceBook } from './price-book.js';
export type { Availability, Resource } from './resource.js';
export type { Assignment, PlantNoise, WeatherRow } from './roster.js';
export {
  curfewSchema,
  riskFileSchema,
  riskSchema,
  ruleSetSchema,
  shiftSchema,
  stepSchema,
  type Curfew,
  type RiskEvent,
  type RiskFile,
  type RiskSettings,
  type RuleSet,
  type ShiftRule,
  type Step,
} from './rule-set.js';
export {
  decisionsSchema,
  momentTextSchema,
  type Commitment,
  type Decisions,
  type GoPoint,
} from './decisions.js';
export {
  concreteSettingsSchema,
  dwellingSchema,
  liftingSettingsSchema,
  maturityModelSchema,
  noiseSettingsSchema,
  siteSchema,
  type ConcreteSettings,
  type Dwelling,
  type LiftingSettings,
  type MaturityModel,
  type NoiseSettings,
  type Site,
} from './site.js';
export { loadRuleSetSchema } from './load-rule-set.js';
export { curfewBars, spreadShapes, stepConditions } from './rule-words.js';
export { noDecisions } from './no-decisions.js';
export { shiftEntrySchema } from './shift-entry.js';
export { sizeLimits } from './size-limits.js';
export { surenesses, type Sourced, type Sureness } from './sourced.js';
export { surenessSchema } from './sureness-schema.js';
export type { Train } from './train.js';
export { weekdays, type Weekday } from './weekdays.js';
export {
  windowStatuses,
  type AccessWindow,
  type Extent,
  type IsolatedSection,
  type WindowStatus,
} from './window.js';
export {
  because,
  commonSentences,
  phrasesOf,
  commonPhrases,
  eachOnce,
  joined,
  saysBy,
  together,
  type GivenTo,
  type Moment,
  type Phrase,
  type Problem,
  type Reasoned,
  type Say,
  type SayPhrase,
  type Sentence,
  type Told,
  type Worded,
} from './sentence.js';
export { phraseText, problemIn, wordsOf, type PhraseBook, type ProblemBook } from './words-of.js';
