import { html, nothing, type TemplateResult } from 'lit';
import type { PlanNote } from '../../src/model/index.js';
import { countText } from '../shared/format.js';
import { cellButton } from './cell-button.js';
import type { Desk } from './desk-parts.js';

/** Beside the answer: what was taken for granted, since nobody said it, and where it can be said. */
export function grantedView(desk: Desk): TemplateResult | typeof nothing {
  const notes = desk.figures.results?.notes ?? [];
  if (notes.length === 0) return nothing;
  return html`<details class="granted">
    <summary>Taken for granted: ${countText(notes.length, 'thing')} that nobody said</summary>
    <ul>
      ${notes.map((one) => noteLine(desk, one))}
    </ul>
  </details>`;
}

function noteLine(desk: Desk, { text, places }: PlanNote): TemplateResult {
  const [place] = places;
  return html`<li>
    ${text}
    ${
      place
        ? cellButton(
            desk,
            { table: place.table, row: place.rows[0] ?? 0, column: place.column },
            `Show the ${place.rows.length > 0 ? 'cells' : 'heading'}`,
          )
        : html`<button type="button" class="plain" @click=${() => desk.show('rules')}>
            Show the rules
          </button>`
    }
  </li>`;
}
