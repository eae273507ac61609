import { html, type TemplateResult } from 'lit';
import type { PlanDocument } from '../../../src/model/index.js';
import type { Desk } from '../desk-parts.js';
import { saveBytes } from '../files/save-file.js';
import { sheetView } from './sheet-view.js';
import type { ResultTable } from '../views.js';
import { wordsOf } from '../../shared/words-of.js';

const kinds: readonly ResultTable[] = ['windows', 'work'];

/** The rows as they were typed, and beside them what follows from them. */
export function tableView(desk: Desk, document: PlanDocument): TemplateResult {
  const { words } = desk;
  return html`<div class="bar">
      <div class="choice" role="group" aria-label=${words.rowsOf}>
        ${kinds.map(
          (kind) =>
            html`<button
              type="button"
              aria-pressed=${kind === desk.resultTable}
              @click=${() => {
                desk.resultTable = kind;
              }}
            >
              ${words.table[kind]}
            </button>`,
        )}
      </div>
      <span class="note quiet">${words.slanted}</span>
      <button type="button" @click=${() => void saveRows(desk, 'csv')}>${words.saveCsv}</button>
      <button type="button" @click=${() => void saveRows(desk, 'xlsx')}>
        ${words.saveWorkbook}
      </button>
    </div>
    ${sheetView(desk, document, desk.resultTable, 'only')}`;
}

/** The rows as they stand on the screen, with what is worked out of them, as a file. */
async function saveRows(desk: Desk, format: 'csv' | 'xlsx'): Promise<void> {
  const { columns, rows } = desk.shownRows();
  if (columns.length === 0) return;
  const name = desk.words.withResults(desk.resultTable);
  try {
    const file = await desk.engine?.exportTable({ name, columns, rows }, format);
    if (file) saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(desk.words.rowsNotWritten(wordsOf(error)));
  }
}
