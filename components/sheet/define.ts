import { PossessionSheet } from './sheet.js';

if (!customElements.get('possession-sheet'))
  customElements.define('possession-sheet', PossessionSheet);

export { PossessionSheet };
export type { CellSelectEvent } from './cell-select-event.js';
export type { RedoEvent } from './redo-event.js';
export type { ResultAskEvent } from './result-ask-event.js';
export type { ResultsChoiceEvent } from './results-choice-event.js';
export type { TableChangeEvent } from './table-change-event.js';
export type { UndoEvent } from './undo-event.js';
