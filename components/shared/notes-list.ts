import { html, nothing, type TemplateResult } from 'lit';
import type { Phrase } from '../../src/model/index.js';
import { saidText } from './said.js';

/** Sentences of the engine under a heading of their own; nothing where there are none. */
export function notesList(
  title: string,
  items: readonly Phrase[],
): TemplateResult | typeof nothing {
  if (items.length === 0) return nothing;
  return html`<section class="notes">
    <h3>${title}</h3>
    <ul>
      ${items.map((item) => html`<li>${saidText(item)}</li>`)}
    </ul>
  </section>`;
}
