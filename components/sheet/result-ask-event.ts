/** A person asks where a calculated value of a row comes from. */
export class ResultAskEvent extends Event {
  static readonly type = 'possession-result-ask';
  /** Index of the data row, 0 for the first below the header. */
  readonly row: number;
  /** Id of the result column. */
  readonly column: string;

  constructor(row: number, column: string) {
    super(ResultAskEvent.type, { bubbles: true, composed: true });
    this.row = row;
    this.column = column;
  }
}

declare global {
  interface HTMLElementEventMap {
    [ResultAskEvent.type]: ResultAskEvent;
  }
}
