export { editLines, type EditLine } from './edit-lines.js';
export { fileNameOf } from './file-name.js';
export { KeptPlan, type KeepOptions } from './kept-plan.js';
export { keepSteps } from './kept-steps.js';
export { lastPlans, rememberPlan } from './last-plan.js';
export {
  PlanStore,
  type AsideEdit,
  type Opened,
  type PlanLine,
  type StoreOptions,
} from './plan-store.js';
export type { Salvage } from './salvage.js';
export { salvageText } from './salvage-text.js';
export { SaveStateEvent } from './save-state-event.js';
export {
  defaultSaveStrings,
  saveText,
  type SaveState,
  type SaveStrings,
  type SaveTrouble,
} from './save-state.js';
export { savePlan, type SavedFile, type SavePlanOptions } from './save-plan.js';
export {
  hasPlanLink,
  linkOf,
  linkText,
  longestLink,
  sureLink,
  type MadeLink,
} from './share-link.js';
export { readLink } from './read-link.js';
export { askToKeep } from './ask-to-keep.js';
