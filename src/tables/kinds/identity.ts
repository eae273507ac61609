import type { TableKind, Problem } from '../../model/index.js';
import type { FieldOf } from '../headings/fields.js';
import { refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { faultAt } from '../text/place.js';
import { isName, longestName, type NamePlaces } from './name-places.js';
import type { ReadRow } from './row-cache.js';
import type { Sheet } from './sheet.js';

/** Reads a name that other cells refer to: as written, at most 200 characters, no `;`. */
export function parseName(text: string): Parsed<string> {
  if (isName(text)) return { value: text };
  return text.length > longestName
    ? refuse('name-too-long', { length: text.length, longestName })
    : refuse('name-holds-separator', { text });
}

/** What is made of a row that has a name. `undefined`: no name could be read. */
export interface Named {
  readonly id: string | undefined;
}

/**
 * Gathers rows that have names of their own and refuses the second of two alike. Says what was said of each row, in
 * file order.
 *
 * @returns What was made of the rows without an error.
 */
export function gatherNamed<K extends TableKind, T extends Named>(
  sheet: Sheet<K>,
  made: readonly ReadRow<T>[],
  field: FieldOf<K>,
  { rowOf, again, file }: Pick<NamePlaces, 'rowOf' | 'again'> & { readonly file: string },
): readonly T[] {
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
  return good;
}

const nameTwice = (id: string, line: number): Problem => problemOf('name-twice', { id, line });
