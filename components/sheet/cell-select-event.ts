/** A reader moves to a cell of a sheet. */
export class CellSelectEvent extends Event {
  static readonly type = 'possession-cell-select';
  /** Index of the data row, 0 for the first below the header. */
  readonly row: number;
  /** Heading of the column in the file. */
  readonly column: string;
  readonly value: string;

  constructor(row: number, column: string, value: string) {
    super(CellSelectEvent.type, { bubbles: true, composed: true });
    this.row = row;
    this.column = column;
    this.value = value;
  }
}

declare global {
  interface HTMLElementEventMap {
    [CellSelectEvent.type]: CellSelectEvent;
  }
}
