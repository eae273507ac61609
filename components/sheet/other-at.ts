/** A cell that somebody else is at. */
export interface OtherAt {
  /** Index of the data row and of the column in the table. */
  readonly row: number;
  readonly column: number;
  /** What they are called; empty: not said. */
  readonly name: string;
}

/** The names of those at each cell, by row and column. */
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
