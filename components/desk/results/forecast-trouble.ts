import { html, nothing, type TemplateResult } from 'lit';
import type { ForecastController } from './forecast-controller.js';

/** Says what could not be worked out. */
export const outlookTrouble = ({ trouble }: ForecastController): TemplateResult | typeof nothing =>
  trouble ? html`<p class="trouble" role="alert">${trouble}</p>` : nothing;
