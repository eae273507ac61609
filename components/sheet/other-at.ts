/** A cell that another person is at. */
export interface OtherAt {
  /** Index of the data row and of the column in the table. */
  readonly row: number;
  readonly column: number;
  /** Their name; empty: unknown. */
  readonly name: string;
}

/** Names of the people at each cell, by row and column. */
export type OthersByCell = ReadonlyMap<number, ReadonlyMap<number, string>>;

export function othersByCell(others: readonly OtherAt[]): OthersByCell {
  const rows = new Map<number, Map<number, string>>();
  for (const { row, column, name } of others) {
    const cells = rows.get(row) ?? new Map<number, string>();
    const before = cells.get(column);
    const said = name || '?';
    cells.set(column, before === undefined ? said : `${before}, ${said}`);
    rows.set(row, cells);
  }
  return rows;
}
