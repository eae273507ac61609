// What a column that is not read might hold: by the words of its heading, and by its cells.
import type { FieldOf, SheetKind } from './fields.js';
import { fieldsNear } from './heading-meaning.js';
import { headingsOf } from './fields.js';
import { meaningOf, wordsOf } from './heading-words.js';

/** Cells looked at. */
const sample = 40;

/** A kind of cell, by the fields that hold it. The first of them that a table has is meant. */
const cellKinds: readonly (readonly [test: RegExp, fields: readonly string[]])[] = [
  [/^(inside|outside)$/i, ['place']],
  [/^(requested|proposed|offered|confirmed|booked|agreed|withdrawn|cancell?ed)$/i, ['status']],
  [/^(up|down|both|slow|fast|main|relief|loop|single)\b.{0,40}$/i, ['lines']],
  [/^\d+(\.\d+)? ?(km|mi)$|^\d+ ?m \d+ ?(ch|y|yd)$|^(km ?)?\d+\+\d{3}$/i, ['from']],
  [/^(\p{L}{2,9}[.,]? )?\d{1,4}[-./]\d{1,2}[-./]\d{1,4}[ T]+\d{1,2}[:.]\d{2}/u, ['start', 'end']],
];

/** Headings whose words are near to no heading known and that people give to a field all the same. */
const hints: ReadonlyMap<string, readonly string[]> = new Map([
  ['location', ['from', 'place']],
  ['where', ['from', 'place']],
  ['site', ['from', 'place']],
  ['limits', ['from', 'lines']],
  ['protection', ['lines', 'isolation']],
  ['power', ['isolation']],
  ['dead', ['isolation']],
  ['earth', ['isolation']],
  ['approved', ['status']],
  ['confirmed', ['status']],
  ['granted', ['status']],
  ['open', ['start']],
  ['taken', ['start']],
  ['close', ['end']],
  ['return', ['end']],
  ['first', ['after']],
  ['depend', ['after']],
]);

/** As a heading is written on a command line: one that a shell would read into is not. */
export const quotedOf = (name: string): string => (/["$`\\]/.test(name) ? 'HEADING' : name);

/** The cells of a column that hold something, at most `count` different ones, each cut short. */
export function exampleCells(
  rows: readonly { readonly cells: readonly string[] }[],
  at: number,
  count: number,
): readonly string[] {
  const seen = new Set<string>();
  for (const { cells } of rows.slice(0, 5000)) {
    const cell = cells[at]?.trim() ?? '';
    if (cell !== '') seen.add(cell.slice(0, 60));
    if (seen.size === count) break;
  }
  return [...seen];
}

/** What a column that is not read might hold, the likeliest first; nothing where nothing speaks for anything. */
export function fieldsSuggested<K extends SheetKind>(
  heading: string,
  kind: K,
  cells: readonly string[],
): readonly FieldOf<K>[] {
  const known = headingsOf(kind);
  const tokens = new Set(meaningOf(wordsOf(heading)));
  const filled = cells.slice(0, sample);
  const byCells = cellKinds
    .filter(([test]) => filled.length > 0 && filled.every((cell) => test.test(cell)))
    .flatMap(([, fields]) => fields);
  const byHint = [...hints].filter(([word]) => tokens.has(word)).flatMap(([, fields]) => fields);
  // What cells and a word of the heading both speak for comes before what only one of them does.
  const byBoth = byCells.filter((field) => byHint.includes(field));
  const names: readonly string[] = [...byBoth, ...byCells, ...byHint, ...fieldsNear(heading, kind)];
  return [...new Set(names)]
    .flatMap((name) => known.find((field) => field === name) ?? [])
    .slice(0, 2);
}
