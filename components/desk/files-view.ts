import { html, type TemplateResult } from 'lit';
import type { ImportAcceptEvent } from '../import/import-accept-event.js';
import type { Desk } from './desk-parts.js';

/** Files in. */
export function filesView(desk: Desk): TemplateResult {
  return html`<div class="fill pad">
    <possession-import
      .engine=${desk.engine}
      .document=${desk.document}
      @possession-import-accept=${(event: ImportAcceptEvent) => {
        desk.take(event.document, event.report);
        desk.show('windows');
      }}
    ></possession-import>
    <p class="note quiet">
      Files are read here and sent nowhere. Nothing changes until what was read is taken. A row that
      cannot be used stays in its sheet, marked, with how to mend it; the figures leave it out.
    </p>
  </div>`;
}
