import { html, type TemplateResult } from 'lit';
import type { TableKind } from '../../src/model/index.js';
import type { CellSelectEvent } from '../sheet/cell-select-event.js';
import type { Desk } from './desk-parts.js';
import { valueIn } from './table-lookup.js';
import { tellLedger, tellPackage } from './told.js';

/** A table of the plan as it was typed. */
export function sheetView(desk: Desk, kind: TableKind, extra = ''): TemplateResult {
  return html`<possession-sheet
    class=${extra}
    data-kind=${kind}
    .table=${desk.document?.tables[kind]}
    .faults=${desk.figures.results?.faults ?? []}
    .unread=${desk.reports.find((one) => one.kind === kind)?.unmatched ?? []}
    .label=${`${kind}, as typed`}
    @possession-cell-select=${(event: CellSelectEvent) => onCell(desk, kind, event)}
  ></possession-sheet>`;
}

/** A row stands for its window or its package: the panel explains it. */
function onCell(desk: Desk, kind: TableKind, { row }: CellSelectEvent): void {
  const table = desk.document?.tables[kind];
  if (!table) return;
  const { figures, picked } = desk;
  if (kind === 'windows') {
    const id = valueIn(table, row, 'window');
    if (!figures.results?.plan.windows.some((one) => one.id === id)) return;
    picked.pick({ window: id, row: 'usable' });
    picked.tell(() => tellLedger(figures.results, picked.window, 'usable'));
  } else if (kind === 'work') {
    const id = valueIn(table, row, 'package');
    picked.tell(() => tellPackage(figures.results, id));
  }
}
