import { html, type TemplateResult } from 'lit';
import type { PlanDocument } from '../../src/model/index.js';
import type { Desk } from './desk-parts.js';
import { sheetView } from './sheet-view.js';
import type { ResultTable } from './views.js';

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
    </div>
    ${sheetView(desk, document, desk.resultTable, 'only')}`;
}
