import { html, type TemplateResult } from 'lit';
import type { DeskStrings } from '../strings.js';

/** The cautions, always in sight; a narrow screen shows the first until asked for all. */
export function footView(words: DeskStrings, whole: boolean, toggle: () => void): TemplateResult {
  return html`<footer aria-label=${words.cautions} class=${whole ? 'whole' : ''}>
    ${words.cautionLines.map((line, index) => html`<p>${index === 0 ? html`<strong>${line}</strong>` : line}</p>`)}
    <button class="plain" type="button" aria-expanded=${whole} @click=${toggle}>
      ${whole ? words.fewer : words.allCautions(words.cautionLines.length)}
    </button>
  </footer>`;
}
