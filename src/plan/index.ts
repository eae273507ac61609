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
export { noSteps, type KeptSteps } from './kept-steps.js';
export { loadOpen } from './load-open.js';
export type { OpenPlan, OpenPlanOptions, Person, PlanChange } from './open-plan.js';
export type { PlanUndo } from './plan-undo.js';
export type { ShiftRecord } from './shift-records.js';
