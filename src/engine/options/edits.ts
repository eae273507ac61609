import { localText, localTimeOf, isoText, type Instant } from '../../calendar/index.js';
import {
  tableIn,
  type AccessWindow,
  type PlanDocument,
  type TableKind,
  type TableText,
  type Train,
} from '../../model/index.js';
import { matchColumns } from '../../tables/index.js';

// Options are changes of the document, made in its cells, so that what was priced is what can be taken.

type Cells = Readonly<Record<string, string>>;

/** A moment as a cell: the wall clock of the zone with its offset, which every reading of it shares. */
export function cellOf(at: Instant, zone: string): string {
  return `${localText(localTimeOf(at, zone))}${isoText(at, zone).slice(-6)}`;
}

/** The document with cells of the row that holds `id` under `key` written anew. @throws {RangeError} Without such a row. */
export function withCells(
  document: PlanDocument,
  kind: TableKind,
  key: string,
  id: string,
  cells: Cells,
): PlanDocument {
  const table = tableIn(document, kind);
  const at = columnOf(table, kind, key);
  const row = table.rows.findIndex((each) => at >= 0 && each[at]?.trim() === id);
  if (row < 0) throw new RangeError(`there is no row of "${id}" in ${table.file}`);
  return withTable(document, kind, write(table, kind, row, cells));
}

/** The document with one more row: the given cells, and for the rest those of the row it is like. */
export function withRow(
  document: PlanDocument,
  kind: TableKind,
  cells: Cells,
  like?: { readonly key: string; readonly id: string },
): PlanDocument {
  const table = tableIn(document, kind);
  const at = like ? columnOf(table, kind, like.key) : -1;
  const model = like && table.rows.find((each) => at >= 0 && each[at]?.trim() === like.id);
  const longer = { ...table, rows: [...table.rows, model ? [...model] : []] };
  return withTable(document, kind, write(longer, kind, longer.rows.length - 1, cells));
}

/** The trains of one window once more, so many minutes later, for another. */
export function withTrainsAgain(
  document: PlanDocument,
  trains: readonly Train[],
  from: AccessWindow,
  to: { readonly id: string; readonly shiftMs: number },
): PlanDocument {
  return trains
    .filter((train) => train.window === from.id)
    .reduce(
      (made, train) =>
        withRow(made, 'trains', {
          train: train.id,
          'passes at': cellOf(train.passesAt + to.shiftMs, from.zone),
          weight: String(train.weight),
          window: to.id,
        }),
      document,
    );
}

function columnOf(table: TableText, kind: TableKind, field: string): number {
  const { fields } = matchColumns(table.columns, kind, table.map);
  return (fields as ReadonlyMap<string, number>).get(field) ?? -1;
}

function write(table: TableText, kind: TableKind, row: number, cells: Cells): TableText {
  const columns = [...table.columns];
  const rows = table.rows.map((each, index) => (index === row ? [...each] : each));
  const own = rows[row]!;
  for (const [field, text] of Object.entries(cells)) {
    let at = columnOf({ ...table, columns }, kind, field);
    if (at < 0) at = columns.push(field) - 1;
    while (own.length <= at) own.push('');
    own[at] = text;
  }
  return { ...table, columns, rows };
}

function withTable(document: PlanDocument, kind: TableKind, table: TableText): PlanDocument {
  return { ...document, tables: { ...document.tables, [kind]: table } };
}
