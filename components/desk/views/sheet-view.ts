import { html, type TemplateResult } from 'lit';
import {
  tableIn,
  windowStatuses,
  type PlanDocument,
  type TableKind,
  type TableText,
} from '../../../src/model/index.js';
import type { TableChange } from '../../../src/plan/index.js';
import type { CellSelectEvent } from '../../sheet/cell-select-event.js';
import type { OtherAt } from '../../sheet/other-at.js';
import type { RedoEvent } from '../../sheet/redo-event.js';
import type { TableChangeEvent } from '../../sheet/table-change-event.js';
import type { ResultAskEvent } from '../../sheet/result-ask-event.js';
import type { ResultsChoiceEvent } from '../../sheet/results-choice-event.js';
import type { ResultColumn } from '../../sheet/result-column.js';
import type { UndoEvent } from '../../sheet/undo-event.js';
import type { Desk } from '../desk-parts.js';
import { askResult } from '../results/result-asks.js';
import { headingOf, valueIn } from '../frame/table-lookup.js';
import type { ResultTable } from '../views.js';

/** A table of the plan as it was typed, to be changed cell by cell. */
export function sheetView(
  desk: Desk,
  document: PlanDocument,
  kind: TableKind,
  extra = '',
): TemplateResult {
  const table = tableIn(document, kind);
  const results = hasResults(kind) ? desk.sheetResults.of(desk, document, kind) : noResults;
  return html`<possession-sheet
    class=${extra}
    data-kind=${kind}
    .readonly=${desk.sharing.reads}
    .others=${othersAt(desk, kind)}
    .table=${table}
    .faults=${desk.figures.results?.faults ?? []}
    .unread=${desk.figures.results?.unread[kind] ?? none}
    .label=${desk.words.files.tableLabel(desk.words.table[kind])}
    .choices=${choicesOf(kind, table)}
    .resultColumns=${results}
    .resultsShown=${hasResults(kind) ? desk.sheetResults.kept.of(kind, results) : null}
    @possession-results-choice=${({ shown }: ResultsChoiceEvent) => {
      if (hasResults(kind)) desk.sheetResults.kept.choose(kind, shown);
    }}
    @possession-result-ask=${(event: ResultAskEvent) => {
      if (hasResults(kind)) askResult(desk, kind, event.row, event.column);
    }}
    .undoState=${{ undo: desk.undoLabel, redo: desk.redoLabel }}
    @possession-cell-select=${(event: CellSelectEvent) => onCell(desk, kind, event)}
    @possession-table-change=${(event: TableChangeEvent) =>
      desk.change(
        document.tables[kind] ? changeOf(kind, event) : { table: kind, whole: event.table },
        `${kind}: ${event.label}`,
      )}
    @possession-undo=${(event: UndoEvent) => {
      event.preventDefault();
      desk.undo();
    }}
    @possession-redo=${(event: RedoEvent) => {
      event.preventDefault();
      desk.redo();
    }}
  ></possession-sheet>`;
}

/** What a person did to the table that they saw. */
const changeOf = (
  table: TableKind,
  { before: of, table: made, steps = [] }: TableChangeEvent,
): TableChange => ({ table, of, steps, made });

const none: readonly string[] = [];
const nobody: readonly OtherAt[] = [];
const noResults: readonly ResultColumn[] = [];

const hasResults = (kind: TableKind): kind is ResultTable => kind === 'windows' || kind === 'work';
const noChoices: Readonly<Record<string, string[]>> = {};

/** What can stand in a column, where that is a short list. */
function choicesOf(kind: TableKind, table: TableText): Readonly<Record<string, string[]>> {
  if (kind !== 'windows') return noChoices;
  return { [headingOf(table, 'windows', 'status') ?? 'status']: [...windowStatuses] };
}

/** The cells of a table that others are at. */
function othersAt({ sharing }: Desk, kind: TableKind): readonly OtherAt[] {
  const here = sharing.others.flatMap(({ cell, name }) =>
    cell?.table === kind ? [{ row: cell.row, column: cell.column, name }] : [],
  );
  return here.length === 0 ? nobody : here;
}

/** A row stands for its window or its package: the panel explains it. */
function onCell(desk: Desk, kind: TableKind, { row, column }: CellSelectEvent): void {
  const { figures, picked, document, sharing } = desk;
  if (!document) return;
  const table = tableIn(document, kind);
  sharing.at({ table: kind, row, column: Math.max(0, table.columns.indexOf(column)) });
  if (kind === 'windows') {
    const id = valueIn(table, kind, row, 'window');
    if (!figures.results?.plan.windows.some((window) => window.id === id)) return;
    picked.pick({ window: id, row: 'usable' });
    picked.explain((why) => why.tellLedger(figures.results, picked.window, 'usable'));
  } else if (kind === 'work') {
    const id = valueIn(table, kind, row, 'package');
    picked.explain((why) => why.tellPackage(figures.results, id));
  }
}
