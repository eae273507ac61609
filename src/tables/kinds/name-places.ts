import type { TableRow } from '../text/table.js';

export const longestName = 200;

/** Whether a text is a name that other cells refer to: at most 200 characters, no `;`. */
export const isName = (text: string): boolean => text.length <= longestName && !text.includes(';');

/** Where names stand in a table: the first row of each, and the rows whose name an earlier row has. */
export interface NamePlaces {
  readonly rowOf: ReadonlyMap<string, number>;
  readonly again: ReadonlySet<number>;
  /** Every text of the column, also those that are no names. */
  readonly texts: Pick<ReadonlySet<string>, 'has'>;
}

/** @param textOf The trimmed text of a row; empty where it has none, or is not read. */
export function placesOf(
  rows: readonly TableRow[],
  textOf: (row: TableRow, index: number) => string,
): NamePlaces {
  const rowOf = new Map<string, number>();
  const again = new Set<number>();
  const others = new Set<string>();
  rows.forEach((row, index) => {
    const text = textOf(row, index);
    if (text === '') return;
    if (!isName(text)) others.add(text);
    else if (rowOf.has(text)) again.add(index);
    else rowOf.set(text, index);
  });
  // Nearly always all are names, and one index of very many will do.
  return { rowOf, again, texts: others.size === 0 ? rowOf : new Set([...rowOf.keys(), ...others]) };
}
