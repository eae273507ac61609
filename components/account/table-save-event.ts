export type TableFormat = 'csv' | 'xlsx';

/** A person wants a table as a file. The listener writes it. */
export class TableSaveEvent extends Event {
  static readonly type = 'possession-table-save';
  /** File name without its ending. */
  readonly name: string;
  readonly columns: readonly string[];
  /** Texts, as long as `columns`. */
  readonly rows: readonly (readonly string[])[];
  readonly format: TableFormat;

  constructor(
    name: string,
    table: { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] },
    format: TableFormat,
  ) {
    super(TableSaveEvent.type, { bubbles: true, composed: true });
    this.name = name;
    this.columns = table.columns;
    this.rows = table.rows;
    this.format = format;
  }
}

declare global {
  interface HTMLElementEventMap {
    [TableSaveEvent.type]: TableSaveEvent;
  }
}
