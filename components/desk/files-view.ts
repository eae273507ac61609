import { html, nothing, type TemplateResult } from 'lit';
import type { ImportAcceptEvent } from '../import/import-accept-event.js';
import { rulesToBegin } from './begin-view.js';
import type { Desk } from './desk-parts.js';

/** Files in: into the plan on the screen, or into a new one with rules to begin with. */
export function filesView(desk: Desk): TemplateResult {
  const { incoming, document } = desk;
  const isNew = incoming.isNew;
  return html`<div class="fill pad">
    <h2 class="head">Bring files in</h2>
    ${document === null || incoming.mustBeNew ? nothing : whereTo(desk)}
    <possession-import
      .engine=${desk.engine}
      .document=${isNew ? incoming.document : document}
      @possession-import-accept=${(event: ImportAcceptEvent) => {
        incoming.done();
        if (isNew) void desk.adopt(event.document);
        else desk.take(event.document, event.report);
        desk.show('windows');
      }}
    ></possession-import>
    ${
      isNew && desk.ruleSets.length > 0
        ? html`<div class="begin">
            ${rulesToBegin(desk.ruleSets, incoming.document.rules, (rules) => incoming.begin(rules))}
          </div>`
        : nothing
    }
    <p class="note quiet">
      Files are read here and sent nowhere. Nothing changes until what was read is taken. A row that
      cannot be used stays in its sheet, marked, with how to mend it; the figures leave it out.
    </p>
  </div>`;
}

function whereTo({ incoming, document }: Desk): TemplateResult {
  const ways = [
    [false, `Into this plan, ${document?.name ?? ''}`],
    [true, 'Into a new plan'],
  ] as const;
  return html`<div class="where-to">
    <div class="choice" role="group" aria-label="Where the files go">
      ${ways.map(
        ([isNew, text]) =>
          html`<button
            type="button"
            aria-pressed=${isNew === incoming.isNew}
            @click=${() => incoming.turn(isNew)}
          >
            ${text}
          </button>`,
      )}
    </div>
    ${
      incoming.isNew
        ? html`<span class="quiet"
            >The plan on the screen stays as it is, kept on this device.</span
          >`
        : nothing
    }
  </div>`;
}
