import { html, nothing, type TemplateResult } from 'lit';
import type { PlanNote } from '../../src/model/index.js';
import { countText } from '../shared/format.js';
import { cellButton } from './cell-button.js';
import type { Desk } from './desk-parts.js';

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
  const things = (some: readonly PlanNote[]): string => countText(some.length, 'thing');
  return html`${noteList(desk, granted, `Taken for granted: ${things(granted)} that nobody said`)}
  ${noteList(desk, written, `To check: ${things(written)} that the tables say`)}`;
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
