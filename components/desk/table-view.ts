import { html, type TemplateResult } from 'lit';
import type { PlanDocument } from '../../src/model/index.js';
import type { Desk } from './desk-parts.js';
import { saveBytes } from './save-file.js';
import { sheetView } from './sheet-view.js';
import type { ResultTable } from './views.js';
import { wordsOf } from '../shared/words-of.js';

const kinds: Readonly<Record<ResultTable, string>> = { windows: 'Windows', work: 'Work' };

/** The rows as they were typed, and beside them what follows from them. */
export function tableView(desk: Desk, document: PlanDocument): TemplateResult {
  return html`<div class="bar">
      <div class="choice" role="group" aria-label="Rows of">
        ${(Object.entries(kinds) as [ResultTable, string][]).map(
          ([kind, text]) =>
            html`<button
              type="button"
              aria-pressed=${kind === desk.resultTable}
              @click=${() => {
                desk.resultTable = kind;
              }}
            >
              ${text}
            </button>`,
        )}
      </div>
      <span class="note quiet"
        >Slanted columns are worked out. They are sorted, filtered and copied with the rows.</span
      >
      <button type="button" @click=${() => void saveRows(desk, 'csv')}>Save rows as CSV</button>
      <button type="button" @click=${() => void saveRows(desk, 'xlsx')}>
        Save rows as a workbook
      </button>
    </div>
    ${sheetView(desk, document, desk.resultTable, 'only')}`;
}

/** The rows as they stand on the screen, with what is worked out of them, as a file. */
async function saveRows(desk: Desk, format: 'csv' | 'xlsx'): Promise<void> {
  const { columns, rows } = desk.shownRows();
  if (columns.length === 0) return;
  const name = `${desk.resultTable} with results`;
  try {
    const file = await desk.engine?.exportTable({ name, columns, rows }, format);
    if (file) saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(`The rows could not be written: ${wordsOf(error)}`);
  }
}
