// Lines, isolation and status decide who is in danger. A table that lacks one of them, and has a heading that nobody
// reads, may well hold it under that heading: such a table is refused until somebody says what the heading holds.
import { dangerFields, decidesDanger } from './danger-fields.js';
import type { SheetKind } from './fields.js';
import { fieldMeant } from './heading-meaning.js';
import type { ColumnMap, ColumnMatch } from './match-columns.js';
import { exampleCells, fieldsSuggested, quotedOf } from './suggest.js';
import type { Table } from '../text/table.js';
import type { Problem } from '../../model/index.js';
import { problemOf } from '../parse/parsed.js';

export interface UnreadDanger {
  /** Index of the column. */
  readonly at: number;
  readonly heading: string;
  /** The field that the words of the heading mean, where they mean one. */
  readonly meant: string | undefined;
  readonly problem: Problem;
}

/** The headings for which a table is refused. `map`, `unread`: what a person said holds a field, or is to stay unread. */
export function unreadDangers<K extends SheetKind>(
  table: Table,
  kind: K,
  match: ColumnMatch<K>,
  {
    map = {},
    unread = [],
  }: { readonly map?: ColumnMap | undefined; readonly unread?: readonly string[] | undefined } = {},
): readonly UnreadDanger[] {
  const lacking = (dangerFields[kind] ?? []).filter(
    (field) => !match.fields.has(field) && !match.doubled.some((item) => item.field === field),
  );
  const said = new Set(unread.map((text) => text.trim()));
  return match.unmatched.flatMap((at) => {
    const heading = table.columns[at]!.trim();
    if (said.has(heading) || said.has(`column ${at + 1}`)) return [];
    const cells = exampleCells(table.rows, at, 40);
    if (heading === '' && cells.length === 0) return [];
    const meant = fieldMeant(heading, kind);
    const rival = meant !== undefined && match.fields.get(meant);
    if (typeof rival === 'number' && decidesDanger(kind, meant!) && !map[meant!]) {
      const other = table.columns[rival]!.trim();
      return cells.length === 0
        ? []
        : [
            {
              at,
              heading: table.columns[at]!,
              meant,
              problem: rivalOf(heading, other, meant!, cells),
            },
          ];
    }
    if (lacking.length === 0) return [];
    const name = heading === '' ? `column ${at + 1}` : heading;
    const problem = dangerOf(name, kind, lacking, cells);
    return [{ at, heading: table.columns[at]!, meant, problem }];
  });
}

/** Two columns may hold a field: nobody but a person can say which is true. */
function rivalOf(name: string, other: string, field: string, cells: readonly string[]): Problem {
  return problemOf('heading-not-read', {
    name: name.slice(0, 200),
    other: other.slice(0, 200),
    field,
    cells: cells.slice(0, 3),
    quoted: quotedOf(name),
  });
}

function dangerOf<K extends SheetKind>(
  name: string,
  kind: K,
  lacking: readonly string[],
  cells: readonly string[],
): Problem {
  const meant = fieldMeant(name, kind);
  const likely = [
    ...new Set([...(meant ? [meant] : []), ...fieldsSuggested(name, kind, cells)]),
  ].filter(
    (field) =>
      !(dangerFields[kind] as readonly string[]).includes(field) || lacking.includes(field),
  );
  const field = likely[0] ?? lacking[0]!;
  return problemOf('heading-not-read/lacking', {
    name: name.slice(0, 200),
    quoted: quotedOf(name),
    lacking,
    likely,
    field,
    cells: cells.slice(0, 3),
  });
}
