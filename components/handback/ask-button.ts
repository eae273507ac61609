import { html, type TemplateResult } from 'lit';

/** A figure as a button that asks where it comes from. */
export const askButton = (
  figure: string | TemplateResult,
  asks: string,
  ask: () => void,
): TemplateResult =>
  html`<button type="button" class="plain ask" @click=${ask}>
    ${figure}<span class="unseen">, ${asks}</span>
  </button>`;
