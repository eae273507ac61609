// The package without a page: the engine, the plan document, and what reads and writes it. Nothing here needs a DOM.
export * from './engine/index.js';
export { englishProblems, faultText } from './engine/english/problems.js';
export {
  cautions,
  emptyPlan,
  emptyTable,
  latestSchema,
  planFile,
  readPlanFile,
  tableKinds,
  wordsOf as problemWords,
  type AccessWindow,
  type Activity,
  type AgreedPlan,
  type AgreedPlans,
  type Fault,
  type Problem,
  type ProblemWords,
  type Needs,
  type Note,
  type Plan,
  type PlanDocument,
  type PlanNote,
  type PriceBook,
  type ReadPlan,
  type Resource,
  type RuleSet,
  type TableKind,
  type TableText,
  type Train,
} from './model/index.js';
export type { Instant, Interval } from './calendar/index.js';
