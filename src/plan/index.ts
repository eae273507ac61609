export { applySteps } from './apply-steps.js';
export { changesBetween } from './changes-between.js';
export type {
  CellText,
  Change,
  PartChange,
  Row,
  TableChange,
  TableField,
  TableStep,
  WholeTable,
} from './change.js';
export type { KeptValue } from './kept-values.js';
export {
  mergedUpdate,
  OpenPlan,
  type OpenPlanOptions,
  type Person,
  type PlanChange,
} from './open-plan.js';
export { noSteps, type KeptSteps, type PlanUndo } from './plan-undo.js';
export type { ShiftRecord } from './shift-records.js';
export { mostUpdateBytes, whatComesIn } from './what-comes-in.js';
