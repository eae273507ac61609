import type { TableKind } from '../model/index.js';
import type { FieldOf } from './fields.js';
import { refuse, type Parsed } from './parse/parsed.js';
import type { SheetRow } from './sheet.js';

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

/** Reads the name of a row and refuses the second of two alike. `seen` is name to line. */
export function readId<K extends TableKind>(
  row: SheetRow<K>,
  field: FieldOf<K>,
  seen: Map<string, number>,
): string | undefined {
  const id = row.require(field, parseName);
  if (id === undefined) return undefined;
  const before = seen.get(id);
  if (before === undefined) {
    seen.set(id, row.line);
    return id;
  }
  row.say('error', field, {
    code: 'name-twice',
    message: `"${id}" is already the name of line ${before}.`,
    mend: 'Give each row a name of its own.',
  });
  return undefined;
}
