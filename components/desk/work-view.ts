import { html, type TemplateResult } from 'lit';
import { tableIn, tableKinds, type PlanDocument } from '../../src/model/index.js';
import type { Desk } from './desk-parts.js';
import { sheetView } from './sheet-view.js';
import type { WorkTable } from './views.js';

const tables = tableKinds.filter((kind): kind is WorkTable => kind !== 'windows');

/** The tables of what is to be done, what it is done with, and what people and weather ask of it. */
export function workView(desk: Desk, document: PlanDocument): TemplateResult {
  return html`<div class="bar">
      <div class="choice" role="group" aria-label="Table">
        ${tables.map(
          (kind) =>
            html`<button
              type="button"
              aria-pressed=${kind === desk.workTable}
              @click=${() => {
                desk.workTable = kind;
              }}
            >
              ${kind.charAt(0).toUpperCase() + kind.slice(1)} ${tableIn(document, kind).rows.length}
            </button>`,
        )}
      </div>
      <span class="said">Pick a row of work: the panel says where its package fits.</span>
    </div>
    ${sheetView(desk, document, desk.workTable, 'only')}`;
}
