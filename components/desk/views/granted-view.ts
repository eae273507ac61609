import { html, nothing, type TemplateResult } from 'lit';
import type { PlanNote } from '../../../src/model/index.js';
import { said } from '../../shared/said.js';
import { cellButton } from '../forms/cell-button.js';
import type { Desk } from '../desk-parts.js';

/** What nobody said, so that the answer takes something in its place. Every other note is about what somebody did write. */
const unsaid: ReadonlySet<string> = new Set([
  'no-rules',
  'lines-blank',
  'isolation-blank',
  'status-blank',
  'made-good-blank',
  'occupies-blank',
  'resource-not-listed',
  'no-resources',
]);

/** Beside the answer: what was taken for granted, since nobody said it, and what is written that is worth a look. */
export function grantedView(desk: Desk): TemplateResult {
  const notes = desk.figures.results?.notes ?? [];
  const granted = notes.filter(({ code }) => unsaid.has(code));
  const written = notes.filter(({ code }) => !unsaid.has(code));
  return html`${noteList(desk, granted, desk.words.granted(granted.length))}
  ${noteList(desk, written, desk.words.toCheck(written.length))}`;
}

function noteList(
  desk: Desk,
  notes: readonly PlanNote[],
  title: string,
): TemplateResult | typeof nothing {
  if (notes.length === 0) return nothing;
  return html`<details class="granted">
    <summary>${title}</summary>
    <ul>
      ${notes.map((note) => noteLine(desk, note))}
    </ul>
  </details>`;
}

function noteLine(desk: Desk, note: PlanNote): TemplateResult {
  const [place] = note.places;
  return html`<li>
    ${said(note)}
    ${
      place
        ? cellButton(
            desk,
            { table: place.table, row: place.rows[0] ?? 0, column: place.column },
            place.rows.length > 0 ? desk.words.showCells : desk.words.showHeading,
          )
        : html`<button type="button" class="plain" @click=${() => desk.show('rules')}>
            ${desk.words.showRules}
          </button>`
    }
  </li>`;
}
