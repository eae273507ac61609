import {
  tableIn,
  tableKinds,
  type Fault,
  type PlanDocument,
  type TableKind,
  type TableText,
} from '../../model/index.js';
import {
  entryOf,
  fieldsSuggested,
  headingsOf,
  matchColumns,
  needed,
  type DateFinding,
  type Table,
} from '../../tables/index.js';
import {
  mergeTables,
  takes,
  type Effect,
  type Merge,
  type Take,
} from '../../tables/merge-tables.js';
import { short } from './faults.js';
import type { SourceOf } from './source.js';
import type { ImportChoices, ImportPreview, RowPreview } from './types.js';

/** Rows shown from the top, and those with a fault shown beside them. */
const firstRows = 5;

const faultyRows = 15;

/** A table as it was found in a file. */
interface Found {
  readonly source: Extract<SourceOf, { is: 'records' }>;
  readonly table: Table;
  readonly kind: TableKind | undefined;
  readonly dates: DateFinding | null;
  readonly faults: readonly Fault[];
  /** Its cells, as they would stand in a document. */
  readonly incoming: TableText;
}

/** What whoever chooses is shown, and the table that a document would have by the choice; undefined for one of no kind. */
export function previewOf(
  { source, table, kind, dates, faults, incoming }: Found,
  document: PlanDocument,
  choices: ImportChoices,
): { readonly preview: ImportPreview; readonly made: TableText | undefined } {
  const take = choices.take ?? 'replace';
  const before = kind === undefined ? undefined : tableIn(document, kind);
  const into = (how: Take): Merge =>
    // A table without headings is one that nobody gave.
    mergeTables(kind!, before!, incoming, before!.columns.length === 0 ? 'replace' : how);
  const made = kind === undefined ? undefined : into(take);
  const preview = {
    ...source.facts,
    ...shownOf(table, kind, faults, choices),
    chosen: {
      encoding: source.encoding,
      delimiter: table.delimiter,
      sheet: source.sheet,
      headingLine: table.line,
      dateOrder: choices.dateOrder ?? dates?.order ?? 'day-first',
      kind: kind ?? null,
      take,
      leave: choices.leave ?? false,
    },
    firstLines: source.records.rows.slice(0, 12).map(({ line, cells }) => ({
      line,
      cells: cells.slice(0, 8).map(short),
    })),
    dates,
    effects: kind === undefined ? null : effectsOf(into),
    rewritten: made?.rewritten ?? 0,
  };
  return { preview, made: made?.table };
}

const effectsOf = (into: (take: Take) => { readonly effect: Effect }): Record<Take, Effect> =>
  Object.fromEntries(takes.map((take) => [take, into(take).effect])) as Record<Take, Effect>;

/** What was found in a table, read as one kind or as none. */
function shownOf(
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
