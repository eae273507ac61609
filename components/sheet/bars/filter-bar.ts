import { html, nothing, type TemplateResult } from 'lit';
import type { SheetState } from '../sheet-state.js';
import { isFiltered } from '../grid/view-acts.js';

export interface FilterActs {
  /** An empty text removes the filter of the column. */
  readonly apply: (column: number, text: string) => void;
  readonly choose: (column: number) => void;
  readonly onlyFaults: (on: boolean) => void;
  readonly lift: () => void;
  readonly close: () => void;
}

/** The active filters, in words. `column` is the one to filter by next. */
export function filterBar(sheet: SheetState, column: number, acts: FilterActs): TemplateResult {
  const { words, wish } = sheet;
  const held = wish.filters.find((filter) => filter.column === column)?.text ?? '';
  const submit = (event: Event): void => {
    event.preventDefault();
    const text = (event.currentTarget as HTMLFormElement).querySelector('input')?.value ?? '';
    acts.apply(column, text);
  };
  return html`<form
    class="bar filters"
    aria-label=${words.filter}
    @submit=${submit}
    @keydown=${(event: KeyboardEvent) => {
      if (event.key === 'Escape') acts.close();
    }}
  >
    <select
      aria-label=${words.filterColumn}
      @change=${(event: Event) => acts.choose(Number((event.target as HTMLSelectElement).value))}
    >
      ${sheet.columns.order.map(
        (index) =>
          html`<option value=${index} .selected=${index === column}>
            ${sheet.headingAt(index)}
          </option>`,
      )}
    </select>
    <label class="holds"
      >${words.filterHolds}
      <input type="text" class="text" autocomplete="off" .value=${held} />
    </label>
    <button type="submit">${words.filterApply}</button>
    <label class="check"
      ><input
        type="checkbox"
        .checked=${wish.onlyFaults}
        @change=${(event: Event) => acts.onlyFaults((event.target as HTMLInputElement).checked)}
      />
      ${words.filterFaults}</label
    >
    ${wish.filters.map(
      (filter) =>
        html`<button
          type="button"
          class="chip"
          aria-label=${words.filterLift(sheet.headingAt(filter.column), filter.text)}
          @click=${() => acts.apply(filter.column, '')}
        >
          ${sheet.headingAt(filter.column)} ${words.filterHolds} <b>${filter.text}</b>
          <span aria-hidden="true">✕</span>
        </button>`,
    )}
    ${
      isFiltered(sheet)
        ? html`<button type="button" class="plain" @click=${acts.lift}>
            ${words.showAllRows}
          </button>`
        : nothing
    }
    <button type="button" class="plain close" @click=${acts.close}>${words.close}</button>
  </form>`;
}
