import { html, type TemplateResult } from 'lit';
import { cautions } from '../../src/model/index.js';
import type { HandbackStrings } from './strings.js';

/** The cautions that go with every figure someone could act on, the weightiest first. */
export function cautionList(strings: HandbackStrings): TemplateResult {
  return html`<ul part="cautions" class="cautions" aria-label=${strings.cautions}>
    ${cautions.map((one, index) => html`<li>${index === 0 ? html`<strong>${one}</strong>` : one}</li>`)}
  </ul>`;
}
