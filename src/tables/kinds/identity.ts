import type { TableKind, Problem } from '../../model/index.js';
import type { FieldOf } from '../headings/fields.js';
import { refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { faultAt } from '../text/place.js';
import type { ReadRow, RowCache } from './row-cache.js';
import type { Sheet } from './sheet.js';

const longestName = 200;

/** Reads a name that other cells refer to: as written, at most 200 characters, no `;`. */
export function parseName(text: string): Parsed<string> {
  if (text.length > longestName) {
    return refuse('name-too-long', { length: text.length, longestName });
  }
  return text.includes(';') ? refuse('name-holds-separator', { text }) : { value: text };
}

/** What is made of a row that has a name. `undefined`: no name could be read. */
export interface Named {
  readonly id: string | undefined;
}

/** Where names stand in a table: the first row of each, and the rows whose name an earlier row has. */
interface NamePlaces {
  readonly rowOf: ReadonlyMap<string, number>;
  readonly again: ReadonlySet<number>;
}

function placesOf(names: readonly (string | undefined)[]): NamePlaces {
  const rowOf = new Map<string, number>();
  const again = new Set<number>();
  names.forEach((name, index) => {
    if (name === undefined) return;
    if (rowOf.has(name)) again.add(index);
    else rowOf.set(name, index);
  });
  return { rowOf, again };
}

/**
 * Gathers rows that have names of their own and refuses the second of two alike. Says what was said of each row, in
 * file order.
 *
 * @returns What was made of the rows without an error, and name to index of row, of all that have one.
 */
export function gatherNamed<K extends TableKind, T extends Named>(
  sheet: Sheet<K>,
  made: readonly ReadRow<T>[],
  field: FieldOf<K>,
  { file, memory }: { readonly file: string; readonly memory?: RowCache<T> | undefined },
): { readonly good: readonly T[]; readonly rowOf: ReadonlyMap<string, number> } {
  const names = made.map((row) => row?.value.id);
  const { rowOf, again } = memory
    ? memory.named('rows', names, () => placesOf(names))
    : placesOf(names);
  const good: T[] = [];
  for (const row of made) {
    if (!row) continue;
    const { value, index, line, bad, faults } = row;
    const twice = again.has(index);
    if (twice) {
      const { id } = value;
      const place = { line, row: index, column: sheet.headingOf(field) };
      const problem = nameTwice(id!, made[rowOf.get(id!)!]!.line);
      sheet.faults.push({ ...faultAt(place, 'error', problem, id), file });
    }
    for (const fault of faults) sheet.faults.push(fault);
    if (!bad && !twice) good.push(value);
  }
  return { good, rowOf };
}

const nameTwice = (id: string, line: number): Problem => problemOf('name-twice', { id, line });
