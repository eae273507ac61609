// Lines, isolation and status decide who is in danger. A table that lacks one of them, and has a heading that nobody
// reads, may well hold it under that heading: such a table is refused until somebody says what the heading holds.
import type { FieldOf, SheetKind } from './fields.js';
import type { ColumnMatch } from './match-columns.js';
import type { Problem } from './parse/parsed.js';
import { exampleCells, fieldsSuggested } from './suggest.js';
import type { Table } from './table.js';

/** By kind of table, the fields that decide who is in danger. */
export const dangerFields: { readonly [K in SheetKind]?: readonly FieldOf<K>[] } = {
  windows: ['lines', 'isolation', 'status'],
  work: ['lines', 'isolation'],
};

export interface UnreadDanger {
  readonly heading: string;
  readonly problem: Problem;
}

/** The headings for which a table is refused. `unread`: those that a person said are to stay unread. */
export function unreadDangers<K extends SheetKind>(
  table: Table,
  kind: K,
  match: ColumnMatch<K>,
  unread: readonly string[] = [],
): readonly UnreadDanger[] {
  const lacking = (dangerFields[kind] ?? []).filter(
    (field) => !match.fields.has(field) && !match.doubled.some((one) => one.field === field),
  );
  if (lacking.length === 0) return [];
  const said = new Set(unread.map((one) => one.trim()));
  return match.unmatched.flatMap((at) => {
    const heading = table.columns[at]!.trim();
    if (said.has(heading) || said.has(`column ${at + 1}`)) return [];
    const cells = exampleCells(table.rows, at, 40);
    if (heading === '' && cells.length === 0) return [];
    const name = heading === '' ? `column ${at + 1}` : heading;
    return [{ heading: table.columns[at]!, problem: dangerOf(name, kind, lacking, cells) }];
  });
}

function dangerOf<K extends SheetKind>(
  name: string,
  kind: K,
  lacking: readonly string[],
  cells: readonly string[],
): Problem {
  const likely = fieldsSuggested(name, kind, cells).filter(
    (field) =>
      !(dangerFields[kind] as readonly string[]).includes(field) || lacking.includes(field),
  );
  const field = likely[0] ?? lacking[0]!;
  const asIs = `--columns "${quotedOf(name)}="`;
  const examples = cells.slice(0, 3).map((cell) => `"${cell}"`);
  return {
    code: 'heading-not-read',
    message: `"${name.slice(0, 200)}" is not read, and the table has no column for ${or(lacking)}. Lines, isolation and status decide who is in danger.${
      likely.length > 0 ? ` Did you mean ${or(likely)}?` : ''
    }${examples.length > 0 ? ` It holds ${examples.join(', ')}.` : ''}`,
    mend:
      likely.length > 0
        ? `Rename it "${field}", or say what it holds: --columns "${quotedOf(name)}=${field}". Where it is meant to stay unread: ${asIs}.`
        : `Where it is meant to stay unread, say so: ${asIs}. Where it holds ${or(lacking)}, rename it so, or say --columns "${quotedOf(name)}=${field}".`,
  };
}

/** As a heading is written on a command line. */
const quotedOf = (name: string): string => (/["$`\\]/.test(name) ? 'HEADING' : name);

const or = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)!}`;
