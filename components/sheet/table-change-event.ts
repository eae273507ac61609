import type { TableText } from '../../src/model/index.js';

/** A person changed the table. Rows that did not change are the same arrays in both tables. */
export class TableChangeEvent extends Event {
  static readonly type = 'possession-table-change';
  readonly table: TableText;
  readonly before: TableText;
  /** What was done, for a person: "3 cells pasted". */
  readonly label: string;

  constructor(table: TableText, before: TableText, label: string) {
    super(TableChangeEvent.type, { bubbles: true, composed: true });
    this.table = table;
    this.before = before;
    this.label = label;
  }
}

declare global {
  interface HTMLElementEventMap {
    [TableChangeEvent.type]: TableChangeEvent;
  }
}
