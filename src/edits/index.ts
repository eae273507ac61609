export { applyEdit, invertEdit } from './apply-edit.js';
export { editBetween } from './edit-between.js';
export {
  editBytes,
  isRowsChange,
  type Edit,
  type PartChange,
  type Row,
  type RowsChange,
  type Splice,
} from './edit.js';
export { History, type KeptSteps } from './history.js';
export { advance, shownOf, type Line, type Pending } from './line.js';
export { rebaseEdit } from './rebase-edit.js';
export { rowsBetween } from './rows-between.js';
export { MadeOf } from './made-of.js';
export { placesIn, unmoved } from './places.js';
export { sameJson } from './same.js';
