import { html, type TemplateResult } from 'lit';
import type { GridCell } from '../../shared/grid-keys.js';
import { findCells, nextFound } from './find.js';
import type { SheetState } from '../sheet-state.js';
import type { SheetStrings } from '../strings.js';

/** The search text and its matches in the current view. */
export class Finder {
  text = '';
  #found: readonly GridCell[] = [];
  #over: readonly unknown[] = [];

  /** Searches again only when the text, the table or the view changed. */
  found(sheet: SheetState): readonly GridCell[] {
    const over = [this.text, sheet.table, sheet.order, sheet.columns.shown, sheet.columns.results];
    if (over.some((item, index) => item !== this.#over[index])) {
      this.#over = over;
      const { rows, columns } = sheet.size;
      this.#found = findCells(this.text, rows, columns, (row, column) => sheet.cell(row, column));
    }
    return this.#found;
  }

  /** The next match, starting from the focused cell. */
  next(sheet: SheetState, step: 1 | -1): GridCell | undefined {
    const found = this.found(sheet);
    return found[nextFound(found, sheet.at, step)];
  }

  /** How many matches there are, and which of them is focused. */
  status(sheet: SheetState, words: SheetStrings): string {
    if (this.text === '') return '';
    const found = this.found(sheet);
    const { row, column } = sheet.at;
    const at = found.findIndex((cell) => cell.row === row && cell.column === column);
    return words.found(at + 1, found.length);
  }
}

export interface FindActs {
  readonly type: (text: string) => void;
  readonly go: (step: 1 | -1) => void;
  readonly close: () => void;
}

export function findBar(finder: Finder, sheet: SheetState, acts: FindActs): TemplateResult {
  const { words } = sheet;
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') acts.go(event.shiftKey ? -1 : 1);
    else if (event.key === 'Escape') acts.close();
    else return;
    event.preventDefault();
  };
  return html`<div class="bar finder" role="search" aria-label=${words.findLabel}>
    <input
      type="text"
      class="wanted"
      autocomplete="off"
      aria-label=${words.findLabel}
      placeholder=${words.findLabel}
      .value=${finder.text}
      @input=${(event: Event) => acts.type((event.target as HTMLInputElement).value)}
      @keydown=${onKey}
    />
    <span class="count" role="status">${finder.status(sheet, words)}</span>
    <button type="button" class="previous" @click=${() => acts.go(-1)}>${words.previous}</button>
    <button type="button" class="next" @click=${() => acts.go(1)}>${words.next}</button>
    <button type="button" class="plain" @click=${acts.close}>${words.close}</button>
  </div>`;
}
