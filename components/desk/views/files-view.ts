import { html, nothing, type TemplateResult } from 'lit';
import type { ImportAcceptEvent } from '../../import/import-accept-event.js';
import { rulesToBegin } from './begin-view.js';
import type { Desk } from '../desk-parts.js';

/** Files in: into the plan on the screen, or into a new one with rules to begin with. */
export function filesView(desk: Desk): TemplateResult {
  const { incoming, document, words } = desk;
  const isNew = incoming.isNew;
  return html`<div class="fill pad">
    <h2 class="head">${words.bringIn}</h2>
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
            ${rulesToBegin(desk.ruleSets, incoming.document.rules, words, (rules) => incoming.begin(rules))}
          </div>`
        : nothing
    }
    <p class="note quiet">${words.filesTold}</p>
  </div>`;
}

function whereTo({ incoming, document, words }: Desk): TemplateResult {
  const choices = [
    [false, words.intoThis(document?.name ?? '')],
    [true, words.intoNew],
  ] as const;
  return html`<div class="where-to">
    <div class="choice" role="group" aria-label=${words.whereTo}>
      ${choices.map(
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
    ${incoming.isNew ? html`<span class="quiet">${words.planStays}</span>` : nothing}
  </div>`;
}
