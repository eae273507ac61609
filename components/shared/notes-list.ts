import { html, nothing, type TemplateResult } from 'lit';

/** Sentences of the engine, which are English, under a heading of their own; nothing where there are none. */
export function notesList(
  title: string,
  items: readonly string[],
): TemplateResult | typeof nothing {
  if (items.length === 0) return nothing;
  return html`<section class="notes">
    <h3>${title}</h3>
    <ul>
      ${items.map((item) => html`<li lang="en">${item}</li>`)}
    </ul>
  </section>`;
}
