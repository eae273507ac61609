import type { TableKind } from '../model/index.js';
import type { FieldOf } from './fields.js';
import { refuse, type Parsed, type Problem } from './parse/parsed.js';
import { faultAt } from './place.js';
import type { MadeRow } from './row-memory.js';
import type { Sheet } from './sheet.js';

const longestName = 200;

/** Reads a name that other cells refer to: as written, at most 200 characters, no `;`. */
export function parseName(text: string): Parsed<string> {
  if (text.length > longestName) {
    return refuse(
      'name-too-long',
      `The name has ${text.length} characters.`,
      `Keep it to ${longestName}.`,
    );
  }
  return text.includes(';')
    ? refuse(
        'name-holds-separator',
        `"${text}" holds a ;, which separates names elsewhere.`,
        'Take the ; out.',
      )
    : { value: text };
}

/** What is made of a row that has a name. `undefined`: no name could be read. */
export interface Named {
  readonly id: string | undefined;
}

/**
 * Gathers rows that have names of their own and refuses the second of two alike. Says what was said of each row, in
 * file order.
 *
 * @returns What was made of the rows without an error, and name to index of row, of all that have one.
 */
export function gatherNamed<K extends TableKind, T extends Named>(
  sheet: Sheet<K>,
  made: readonly MadeRow<T>[],
  field: FieldOf<K>,
  file: string,
): { readonly good: readonly T[]; readonly rowOf: ReadonlyMap<string, number> } {
  const good: T[] = [];
  const rowOf = new Map<string, number>();
  const lines = new Map<string, number>();
  for (const { value, index, line, bad, faults } of made) {
    const { id } = value;
    const before = id === undefined ? undefined : lines.get(id);
    if (id !== undefined && before !== undefined) {
      const place = { line, row: index, column: sheet.headingOf(field) };
      sheet.faults.push({ ...faultAt(place, 'error', nameTwice(id, before), id), file });
    } else if (id !== undefined) {
      lines.set(id, line);
      rowOf.set(id, index);
    }
    for (const fault of faults) sheet.faults.push(fault);
    if (!bad && before === undefined) good.push(value);
  }
  return { good, rowOf };
}

const nameTwice = (id: string, line: number): Problem => ({
  code: 'name-twice',
  message: `"${id}" is already the name of line ${line}.`,
  mend: 'Give each row a name of its own.',
});
