import type { TableText } from '../../src/model/index.js';
import type { TableStep } from '../../src/plan/change.js';

/** A person changed the table. Rows that did not change are the same arrays in both tables. */
export class TableChangeEvent extends Event {
  static readonly type = 'possession-table-change';
  readonly table: TableText;
  readonly before: TableText;
  /** Description of the change: "3 cells pasted". */
  readonly label: string;
  /** Steps of the change; absent: an undo or redo by the sheet itself. */
  readonly steps: readonly TableStep[] | undefined;

  constructor(table: TableText, before: TableText, label: string, steps?: readonly TableStep[]) {
    super(TableChangeEvent.type, { bubbles: true, composed: true });
    this.table = table;
    this.before = before;
    this.label = label;
    this.steps = steps;
  }
}

declare global {
  interface HTMLElementEventMap {
    [TableChangeEvent.type]: TableChangeEvent;
  }
}
