import { html, type TemplateResult } from 'lit';
import { tableIn, tableKinds, type PlanDocument } from '../../../src/model/index.js';
import type { Desk } from '../desk-parts.js';
import { sheetView } from './sheet-view.js';

/** Every table of the plan as it was typed. */
export function workView(desk: Desk, document: PlanDocument): TemplateResult {
  return html`<div class="bar">
      <div class="choice" role="group" aria-label=${desk.words.tableShown}>
        ${tableKinds.map(
          (kind) =>
            html`<button
              type="button"
              aria-pressed=${kind === desk.workTable}
              @click=${() => {
                desk.workTable = kind;
              }}
            >
              ${desk.words.table[kind]} ${tableIn(document, kind).rows.length}
            </button>`,
        )}
      </div>
      <span class="said">${desk.words.asTyped}</span>
    </div>
    ${sheetView(desk, document, desk.workTable, 'only')}`;
}
