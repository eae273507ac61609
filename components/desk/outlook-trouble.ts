import { html, nothing, type TemplateResult } from 'lit';
import type { Outlooks } from './outlooks.js';

/** Says what could not be worked out. */
export const outlookTrouble = ({ trouble }: Outlooks): TemplateResult | typeof nothing =>
  trouble ? html`<p class="trouble" role="alert">${trouble}</p>` : nothing;
