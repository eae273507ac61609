import { html, type TemplateResult } from 'lit';
import { cautions } from '../../src/model/index.js';

/** The cautions, always in sight; a narrow screen shows the first until asked for all. */
export function footView(whole: boolean, toggle: () => void): TemplateResult {
  return html`<footer aria-label="Cautions" class=${whole ? 'whole' : ''}>
    ${cautions.map((one, index) => html`<p>${index === 0 ? html`<strong>${one}</strong>` : one}</p>`)}
    <button class="plain" type="button" aria-expanded=${whole} @click=${toggle}>
      ${whole ? 'Fewer' : `All ${cautions.length} cautions`}
    </button>
  </footer>`;
}
