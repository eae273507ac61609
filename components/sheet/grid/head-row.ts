import { html, nothing, type TemplateResult } from 'lit';
import type { SheetState } from '../sheet-state.js';

export interface HeadOptions {
  readonly unread: readonly string[];
  /** Index of the column whose heading is being edited; -1: none. */
  readonly renaming: number;
  readonly openMenu: (column: number, button: HTMLElement) => void;
  readonly rename: (column: number, heading: string) => void;
  readonly cancelRename: () => void;
}

/** The headings. Positions are those on the screen; `aria-colindex` is that of the file, so it counts hidden columns. */
export function headRow(sheet: SheetState, options: HeadOptions): TemplateResult {
  return html`<div class="row head" role="row" aria-rowindex="1">
    <div class="line" aria-hidden="true"></div>
    ${sheet.columns.shown.map((column, place) => headCell(sheet, column, place, options))}
  </div>`;
}

function headCell(
  sheet: SheetState,
  column: number,
  place: number,
  { unread, renaming, openMenu, rename, cancelRename }: HeadOptions,
): TemplateResult {
  const { words, wish, block } = sheet;
  const heading = sheet.headingAt(column);
  const worked = sheet.resultOf(column);
  const result = worked !== undefined;
  const sorted = wish.sort?.column === column ? wish.sort : undefined;
  const filtered = wish.filters.some((filter) => filter.column === column);
  const within = place >= block.start && place <= block.end;
  return html`<div
    role="columnheader"
    class=${[
      place === 0 ? 'first' : '',
      within ? 'within' : '',
      filtered ? 'filtered' : '',
      sheet.columns.figures[column] === true ? 'figures' : '',
      result ? 'result' : '',
    ].join(' ')}
    aria-colindex=${sheet.columns.order.indexOf(column) + 1}
    aria-sort=${sorted ? (sorted.down ? 'descending' : 'ascending') : nothing}
    data-head=${place}
    title=${heading}
  >
    ${
      renaming === column
        ? headingField(heading, words.heading, (text) => rename(column, text), cancelRename)
        : html`<span class="name"
              ><span lang=${worked ? (worked.lang ?? 'en') : nothing}>${heading}</span
              >${result ? html`<span class="unseen"> ${words.workedOut}</span>` : nothing}${
                !result && unread.includes(heading)
                  ? html`<span class="unread"> ${words.unread}</span>`
                  : nothing
              }</span
            >${
              sorted
                ? html`<span class="sort" aria-hidden="true">${sorted.down ? '▾' : '▴'}</span>`
                : nothing
            }<button
              type="button"
              class="open"
              tabindex="-1"
              aria-haspopup="menu"
              aria-label=${words.columnMenu(heading)}
              @click=${(event: Event) => {
                event.stopPropagation();
                openMenu(place, event.currentTarget as HTMLElement);
              }}
            >
              <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
                <circle cx="6" cy="2" r="1.2" />
                <circle cx="6" cy="6" r="1.2" />
                <circle cx="6" cy="10" r="1.2" />
              </svg></button
            ><span class="sizer" data-size=${column} title=${words.resizeColumn}></span>`
    }
  </div>`;
}

function headingField(
  heading: string,
  label: string,
  keep: (text: string) => void,
  leave: () => void,
): TemplateResult {
  return html`<input
    type="text"
    class="rename"
    aria-label=${label}
    .value=${heading}
    @keydown=${(event: KeyboardEvent) => {
      event.stopPropagation();
      if (event.isComposing) return;
      if (event.key === 'Enter' || event.key === 'Tab')
        keep((event.target as HTMLInputElement).value);
      else if (event.key === 'Escape') leave();
      else return;
      event.preventDefault();
    }}
    @blur=${(event: Event) => keep((event.target as HTMLInputElement).value)}
    @click=${(event: Event) => event.stopPropagation()}
    @pointerdown=${(event: Event) => event.stopPropagation()}
  />`;
}
