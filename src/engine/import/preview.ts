import { tableKinds, type Fault, type TableKind } from '../../model/index.js';
import {
  entryOf,
  fieldsSuggested,
  headingsOf,
  matchColumns,
  needed,
  type Table,
} from '../../tables/index.js';
import type { ImportChoices, ImportPreview, RowPreview } from './types.js';

/** Rows shown from the top, and those with a fault shown beside them. */
const firstRows = 5;

const faultyRows = 15;

/** As much of a cell as a report shows. */
export const short = (cell: string): string => cell.slice(0, 200);

/** What was found in a table, read as one kind or as none. */
export function previewOf(
  table: Table,
  kind: TableKind | undefined,
  faults: readonly Fault[],
  { map, unread = [] }: Pick<ImportChoices, 'map' | 'unread'>,
): Pick<ImportPreview, 'above' | 'kinds' | 'fields' | 'columns' | 'rows'> {
  const { columns } = table;
  const match = kind === undefined ? undefined : matchColumns(columns, kind, map);
  const fieldAt = new Map([...(match?.fields ?? [])].map(([field, at]) => [at, field as string]));
  const byRow = new Map<number, Fault[]>();
  const faulty = new Map<string, number>();
  for (const fault of faults) {
    if (fault.column !== undefined) faulty.set(fault.column, (faulty.get(fault.column) ?? 0) + 1);
    if (fault.row === undefined) continue;
    const list = byRow.get(fault.row);
    if (list) list.push(fault);
    else byRow.set(fault.row, [fault]);
  }
  const bad = [...byRow.keys()].filter((row) => row >= firstRows).sort((a, b) => a - b);
  const shown = [...table.rows.keys()].slice(0, firstRows).concat(bad.slice(0, faultyRows));
  return {
    above: table.above?.length ?? 0,
    kinds: tableKinds.map((text) => {
      const { fields, missing } = matchColumns(columns, text);
      return { kind: text, read: fields.size, missing };
    }),
    fields:
      kind === undefined
        ? []
        : headingsOf(kind).map((field) => ({
            field,
            needed: (needed[kind] as readonly string[]).includes(field),
          })),
    columns: columns.map((heading, at) => {
      const filled = table.rows.flatMap(({ cells }) => (cells[at]?.trim() ? [cells[at]] : []));
      const field = fieldAt.get(at) ?? null;
      const entry = entryOf(columns, at);
      return {
        heading: short(heading),
        entry,
        field,
        unread: unread.includes(heading.trim()) || unread.includes(entry),
        suggested:
          kind === undefined || field !== null
            ? []
            : fieldsSuggested(heading, kind, filled.slice(0, 40)),
        samples: filled.slice(0, 3).map((cell) => cell.slice(0, 60)),
        filled: filled.length,
        faulty: faulty.get(heading) ?? 0,
      };
    }),
    rows: shown.map((row): RowPreview => {
      const { line, cells } = table.rows[row]!;
      return { line, row, cells: cells.map(short), faults: byRow.get(row) ?? [] };
    }),
  };
}
