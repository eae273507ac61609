import type { TableText } from '../../../src/model/index.js';

const breaks = /\r\n|\r|\n/g;
const breaksIn = (cells: readonly string[]): number =>
  cells.reduce((sum, cell) => sum + (cell.match(breaks)?.length ?? 0), 0);

/** The line of the saved file at which each row begins; cells may contain line breaks. */
export class LineNumbers {
  #rows: readonly string[][] = [];
  #extra: Uint16Array = new Uint16Array(0);
  #starts: Uint32Array = new Uint32Array(0);

  /** Rows unchanged at their index are not read again, so that an edit in a long table is cheap. */
  read(table: TableText): void {
    const { rows } = table;
    const extra = new Uint16Array(rows.length);
    const starts = new Uint32Array(rows.length);
    let line = 2 + breaksIn(table.columns);
    for (let row = 0; row < rows.length; row += 1) {
      extra[row] = rows[row] === this.#rows[row] ? this.#extra[row]! : breaksIn(rows[row]!);
      starts[row] = line;
      line += 1 + extra[row]!;
    }
    this.#rows = rows;
    this.#extra = extra;
    this.#starts = starts;
  }

  of(row: number): number {
    return this.#starts[row] ?? row + 2;
  }
}
