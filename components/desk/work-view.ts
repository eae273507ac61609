import { html, type TemplateResult } from 'lit';
import type { Desk } from './desk-parts.js';
import { sheetView } from './sheet-view.js';
import type { WorkTable } from './views.js';

const tables: readonly WorkTable[] = ['work', 'resources', 'trains'];

/** The tables of what is to be done and what it is done with. */
export function workView(desk: Desk): TemplateResult {
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
              ${kind.charAt(0).toUpperCase() + kind.slice(1)}
              ${desk.document?.tables[kind]?.rows.length ?? 0}
            </button>`,
        )}
      </div>
      <span class="said">Pick a row of work: the panel says where its package fits.</span>
    </div>
    ${sheetView(desk, desk.workTable, 'only')}`;
}
