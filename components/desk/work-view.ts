import { html, type TemplateResult } from 'lit';
import { tableIn, tableKinds, type PlanDocument } from '../../src/model/index.js';
import type { Desk } from './desk-parts.js';
import { sheetView } from './sheet-view.js';

/** Every table of the plan as it was typed. */
export function workView(desk: Desk, document: PlanDocument): TemplateResult {
  return html`<div class="bar">
      <div class="choice" role="group" aria-label="Table">
        ${tableKinds.map(
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
      <span class="said"
        >As typed. Pick a row of work or of windows: the panel says what follows from it.</span
      >
    </div>
    ${sheetView(desk, document, desk.workTable, 'only')}`;
}
