import { html, type TemplateResult } from 'lit';

/** A part of the view for the shift that is not needed now: its heading stays, with how much is behind it. */
export function liveFold(
  name: string,
  heading: string,
  count: string,
  body: unknown,
): TemplateResult {
  return html`<details class="fold ${name}">
    <summary><span class="heading">${heading}</span> <span class="count">${count}</span></summary>
    <div class="inside">${body}</div>
  </details>`;
}
