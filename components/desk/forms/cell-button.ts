import { html, type TemplateResult } from 'lit';
import type { NotePlace } from '../../../src/model/index.js';
import type { Desk } from '../desk-parts.js';

type CellPlace = Pick<NotePlace, 'table'> & {
  readonly row: number;
  readonly column: string | undefined;
};

/** A button that leads to a cell of a table. */
export const cellButton = (
  desk: Desk,
  { table, row, column }: CellPlace,
  words: string,
): TemplateResult =>
  html`<button
    type="button"
    class="plain"
    @click=${() =>
      void desk.goTo({ to: 'cell', table, row, ...(column !== undefined && { column }) })}
  >
    ${words}
  </button>`;
