import { tableKinds, type Fault, type PlanDocument, type TableText } from '../../model/index.js';
import {
  findDates,
  findHeadings,
  guessKind,
  keepReading,
  likelyKind,
  matchColumns,
  newReading,
  tableOfRecords,
  type Table,
} from '../../tables/index.js';
import { faultsOf, short } from './faults.js';
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
export async function takeTable(
  name: string,
  source: Source,
  document: PlanDocument,
  choices?: ImportChoices,
): Promise<Taken> {
  const found = findHeadings(source.records, choices?.kind ? [choices.kind] : tableKinds);
  const table = tableOfRecords(source.records, choices?.headingLine ?? found?.line);
  const chosenLine = choices?.headingLine !== undefined;
  const kind =
    choices?.kind ??
    guessKind(table.columns) ??
    (chosenLine ? likelyKind(table.columns) : found?.kind);
  const file = source.sheet === null ? name : `${name}, sheet ${source.sheet}`;
  const map = choices?.map;
  const chosen = {
    ...(map && { map }),
    ...(choices?.unread && { unread: choices.unread }),
    ...(choices?.dateOrder && { dateOrder: choices.dateOrder }),
  };
  const reading = kind === 'work' ? newReading() : undefined;
  const faults =
    kind === undefined
      ? [notKnown(table, file)]
      : await faultsOf(kind, table, file, document, chosen, reading);
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
  // Shown to whoever chooses, and loaded with the first such file: else a table goes in the place of the one before.
  const { preview, made } = choices
    ? (await import('./preview.js')).previewOf(
        {
          source,
          table,
          kind,
          dates: kind === undefined ? null : findDates(table, kind, map),
          faults,
          incoming,
        },
        document,
        choices,
      )
    : { preview: undefined, made: incoming };
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
    ...(preview && { preview }),
  };
  if (!made || kind === undefined || choices?.leave) return { document, report };
  if (reading) keepReading(made, reading);
  return {
    document: { ...document, tables: { ...document.tables, [kind]: made } },
    report,
  };
}

function notKnown(table: Table, file: string): Fault {
  const names = table.columns.slice(0, 40).map(short);
  return {
    ...problemOf('table-not-recognised', { names }),
    severity: 'error',
    file,
    line: table.line,
  };
}
