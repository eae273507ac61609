export { applyEdit } from './apply-edit.js';
export { editBetween } from './edit-between.js';
export {
  isRowsChange,
  type Edit,
  type PartChange,
  type Row,
  type RowsChange,
  type Splice,
} from './edit.js';
export { rowsBetween } from './rows-between.js';
export { ListMemo } from './list-memo.js';
export { placesIn, unmoved } from './places.js';
export { sameItems, sameJson } from './same.js';
