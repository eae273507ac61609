export {
  minutesInOneVisit,
  unitsLeft,
  type Activity,
  type Demand,
  type Link,
  type Spread,
  type UnitWork,
  type WholeWork,
} from './activity.js';
export { cautions } from './cautions.js';
export { faultText, type Fault } from './fault.js';
export { needsKey, needsOf, ordinaryNeeds, type Needs } from './needs.js';
export type { Plan } from './plan.js';
export {
  emptyPlan,
  emptyTable,
  localDateSchema,
  planDocumentSchema,
  tableKinds,
  tableTextSchema,
  type PlanDocument,
  type TableKind,
  type TableText,
} from './plan-document.js';
export { priceBookSchema, type PriceBook } from './price-book.js';
export type { Availability, Resource } from './resource.js';
export {
  curfewSchema,
  noRules,
  ruleSetSchema,
  shiftSchema,
  stepConditions,
  stepSchema,
  weekdays,
  type Curfew,
  type RuleSet,
  type ShiftRule,
  type Step,
  type Weekday,
} from './rule-set.js';
export type { Train } from './train.js';
export {
  windowStatuses,
  type AccessWindow,
  type Extent,
  type IsolatedSection,
  type WindowStatus,
} from './window.js';
