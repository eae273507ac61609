import {
  tableIn,
  tableKinds,
  type Fault,
  type PlanDocument,
  type TableText,
} from '../../model/index.js';
import {
  findDates,
  findHeadings,
  guessKind,
  keepReading,
  likelyKind,
  matchColumns,
  mergeTables,
  newReading,
  tableOfRecords,
  takes,
  type Effect,
  type Table,
  type Take,
} from '../../tables/index.js';
import { faultsOf } from './faults.js';
import { previewOf, short } from './preview.js';
import type { SourceOf } from './source.js';
import type { ImportChoices, ImportReport } from './types.js';
import { problemOf } from '../../tables/parse/parsed.js';

/** A document with what was taken from one file, and what is told of it. */
export interface Taken {
  readonly document: PlanDocument;
  readonly report: ImportReport;
}

type Source = Extract<SourceOf, { is: 'records' }>;

/** Takes a table into the document as chosen, or as found where nothing was chosen. */
export function takeTable(
  name: string,
  source: Source,
  document: PlanDocument,
  choices?: ImportChoices,
): Taken {
  const found = findHeadings(source.records, choices?.kind ? [choices.kind] : tableKinds);
  const table = tableOfRecords(source.records, choices?.headingLine ?? found?.line);
  const chosenLine = choices?.headingLine !== undefined;
  const kind =
    choices?.kind ??
    guessKind(table.columns) ??
    (chosenLine ? likelyKind(table.columns) : found?.kind);
  const file = source.sheet === null ? name : `${name}, sheet ${source.sheet}`;
  const map = choices?.map;
  const dates = kind === undefined ? null : findDates(table, kind, map);
  const chosen = {
    ...(map && { map }),
    ...(choices?.unread && { unread: choices.unread }),
    ...(choices?.dateOrder && { dateOrder: choices.dateOrder }),
  };
  const reading = kind === 'work' ? newReading() : undefined;
  const faults =
    kind === undefined
      ? [notKnown(table, file)]
      : faultsOf(kind, table, file, document, chosen, reading);
  const incoming: TableText = {
    file,
    columns: [...table.columns],
    // The very rows that were read, so that nobody need read them again: a document is never changed in place.
    rows: table.rows.map((row) => row.cells as string[]),
    ...(table.above && { above: table.above.map((row) => [...row.cells]) }),
    ...(map && { map: { ...map } }),
    ...(choices?.unread && { unread: [...choices.unread] }),
    ...(choices?.dateOrder && { dateOrder: choices.dateOrder }),
  };
  const take = choices?.take ?? 'replace';
  const before = kind === undefined ? undefined : tableIn(document, kind);
  const into = (how: Take): ReturnType<typeof mergeTables> =>
    // A table without headings is one that nobody gave.
    mergeTables(kind!, before!, incoming, before!.columns.length === 0 ? 'replace' : how);
  const made = kind === undefined ? undefined : into(take);
  const match = kind === undefined ? undefined : matchColumns(table.columns, kind, map);
  const report: ImportReport = {
    file,
    kind: kind ?? 'unknown',
    encoding: source.encoding ?? '',
    delimiter: table.delimiter,
    rows: table.rows.length,
    matched: [...(match?.fields ?? [])].map(([field, at]) => ({
      column: table.columns[at]!,
      field,
    })),
    unmatched: match?.unmatched.map((at) => table.columns[at]!) ?? [],
    faults,
    ...(choices && {
      preview: {
        ...source.facts,
        ...previewOf(table, kind, faults, chosen),
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
      },
    }),
  };
  if (!made || kind === undefined || choices?.leave) return { document, report };
  if (reading) keepReading(made.table, reading);
  return {
    document: { ...document, tables: { ...document.tables, [kind]: made.table } },
    report,
  };
}

const effectsOf = (into: (take: Take) => { readonly effect: Effect }): Record<Take, Effect> =>
  Object.fromEntries(takes.map((take) => [take, into(take).effect])) as Record<Take, Effect>;

function notKnown(table: Table, file: string): Fault {
  const names = table.columns.slice(0, 40).map(short);
  return {
    ...problemOf('table-not-recognised', { names }),
    severity: 'error',
    file,
    line: table.line,
  };
}
